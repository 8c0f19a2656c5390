import { expect, test } from 'vitest';
import { type LossRow, lossRow, misses } from '../../reference/loss-rows.ts';
import { type BendDesignation, bendLimits, smallestBendRadii, smallestBendRadius } from './bend-limits.ts';
import { decibelFromNepers } from './decibel.ts';

interface PrintedLimit {
  readonly radius_m: number;
  readonly turns: number;
  readonly max1550_dB: number;
  readonly max1625_dB: number;
}

const ceiling = (designation: BendDesignation, radius: number, turns: number, wavelength: number) =>
  decibelFromNepers(
    bendLimits.find(
      (row) =>
        row.designation === designation &&
        row.radius === radius &&
        row.turns === turns &&
        row.wavelength === wavelength,
    )!.ceiling,
  );

const tables: readonly { row: LossRow; designation: BendDesignation }[] = [
  { row: lossRow('bend-itu-g657-a1'), designation: 'G.657.A1' },
  { row: lossRow('bend-itu-g657-a2'), designation: 'G.657.A2' },
  { row: lossRow('bend-itu-g657-b3'), designation: 'G.657.B3' },
];
for (const { row, designation } of tables) {
  test(row.title, () => {
    const printed = row.expected.limits as unknown as readonly PrintedLimit[];
    expect(bendLimits.filter((limit) => limit.designation === designation)).toHaveLength(2 * printed.length);
    for (const { radius_m, turns, max1550_dB, max1625_dB } of printed) {
      expect(ceiling(designation, radius_m, turns, 1550e-9)).toBeCloseTo(max1550_dB, 9);
      expect(ceiling(designation, radius_m, turns, 1625e-9)).toBeCloseTo(max1625_dB, 9);
    }
  });
}

const g652 = lossRow('bend-itu-g652d');
test(g652.title, () => {
  const { radius_m, turns, wavelength_m } = g652.inputs;
  expect(misses(g652, { maxLoss_dB: ceiling('G.652.D', radius_m!, turns!, wavelength_m!) })).toEqual([]);
});

const radii = lossRow('bend-itu-min-radius');
test(radii.title, () => {
  const classes = radii.inputs.classes as unknown as readonly BendDesignation[];
  expect(smallestBendRadii.map(({ designation }) => designation)).toEqual(classes);
  expect(
    misses(radii, { minRadius_m: classes.map((designation) => smallestBendRadius(designation).radius) }),
  ).toEqual([]);
});

test('a wider bend of one turn, and a shorter wavelength, are promised less loss', () => {
  for (const one of bendLimits) {
    for (const other of bendLimits) {
      const alike = one.designation === other.designation && one.turns === other.turns;
      if (alike && one.radius > other.radius && one.wavelength === other.wavelength) {
        expect(one.ceiling).toBeLessThan(other.ceiling);
      }
      if (alike && one.radius === other.radius && one.wavelength < other.wavelength) {
        expect(one.ceiling).toBeLessThan(other.ceiling);
      }
    }
  }
});
