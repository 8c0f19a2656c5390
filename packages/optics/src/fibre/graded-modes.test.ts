import { expect, test } from 'vitest';
import precise from '../../reference/graded-modes.json' with { type: 'json' };
import reference from '../../reference/modes.json' with { type: 'json' };
import { OutOfRange } from '../out-of-range.ts';
import { gradedCutoff, gradedModes } from './graded-modes.ts';
import { fillRadialTable } from './guided-mode.ts';
import { normalisedPropagation } from './lp-mode.ts';
import { countModes } from './mode-count.ts';
import { modeFieldRadius } from './mode-field.ts';
import { coreFraction } from './radial-integral.ts';
import { lp11CutoffV } from './v-number.ts';

interface TruncatedCase {
  readonly id: string;
  readonly numericalError: number;
  readonly inputs: { readonly V: number };
  readonly expected: {
    readonly guidedLmCount: number;
    readonly guidedWithOrientation: number;
    readonly modes: readonly {
      readonly l: number;
      readonly m: number;
      readonly u: number;
      readonly w: number;
      readonly b: number;
      readonly coreFraction: number;
      readonly uInfiniteParabola: number;
    }[];
  };
}

const cases = reference.cases.filter(
  ({ kind }) => kind === 'parabolic-truncated',
) as unknown as readonly TruncatedCase[];

// Source of every row: packages/optics/reference/modes.json (Kummer's function with mpmath against spectral elements).
for (const { id, inputs, expected, numericalError } of cases) {
  test(`${id}: every guided mode has its u, w, b and core fraction, and there are no others`, () => {
    const modes = gradedModes(inputs.V);
    const counted = countModes(modes);
    expect(counted.lpModes).toBe(expected.guidedLmCount);
    expect(counted.withOrientation).toBe(expected.guidedWithOrientation);
    for (const row of expected.modes) {
      const mode = modes.find(({ l, m }) => l === row.l && m === row.m)!;
      // the file's own error, the disagreement of its two methods
      expect(Math.abs(mode.u - row.u)).toBeLessThan(numericalError);
      expect(Math.abs(mode.w - row.w)).toBeLessThan((numericalError * inputs.V) / row.w);
      expect(Math.abs(normalisedPropagation(mode) - row.b)).toBeLessThan(numericalError);
      expect(Math.abs(coreFraction(mode) - row.coreFraction)).toBeLessThan(10 * numericalError);
      expect(mode.u).toBeLessThan(row.uInfiniteParabola);
    }
  });
}

// Source: packages/optics/reference/graded-modes.json: Kummer's function with mpmath at 80 digits.
for (const row of precise.modes) {
  test(`V = ${row.V}: LP${row.l},${row.m} as mpmath has it, field included`, () => {
    const mode = gradedModes(row.V).find(({ l, m }) => l === row.l && m === row.m)!;
    // u of order V to some roundings; of w what u leaves, save that LP01 far below V = 1 is solved for w
    expect(Math.abs(mode.u - row.u)).toBeLessThan(3e-15 * row.V);
    expect(Math.abs(mode.w - row.w)).toBeLessThan(
      row.l === 0 && row.V < 1 ? 1e-13 * row.w : (3e-15 * row.V ** 2) / row.w,
    );
    expect(coreFraction(mode) / row.coreFraction).toBeCloseTo(1, 11);
    const [radii, expected] = [0, 1].map((i) => Float64Array.from(row.field, (point) => point[i]!));
    const field = new Float64Array(radii!.length);
    fillRadialTable(mode, radii!, field);
    const largest = Math.max(...expected!.map(Math.abs));
    for (let i = 0; i < field.length; i++) {
      // an error of u moves the outermost ring by as much as V times itself
      expect(Math.abs(field[i]! - expected![i]!), `ρ = ${radii![i]}`).toBeLessThan(1e-12 * largest);
    }
  });
}

// Source: packages/optics/reference/modes.json, w → 0 limit of the Kummer condition; 3.518 also Gambling, Payne and
// Matsumura, Electron. Lett. 13, 139 (1977) (from memory).
test('modes appear where they should', () => {
  const { LP1m, LP2m } = reference.cases.find(({ id }) => id === 'anchor-cutoffs')!.expected
    .truncatedParabola as { readonly LP1m: readonly number[]; readonly LP2m: readonly number[] };
  expect(gradedCutoff(1, 1)).toBeCloseTo(LP1m[0]!, 11);
  expect(gradedCutoff(1, 2)).toBeCloseTo(LP1m[1]!, 11);
  expect(gradedCutoff(2, 1)).toBeCloseTo(LP2m[0]!, 11);
  expect(gradedCutoff(0, 1)).toBe(0);
  expect(lp11CutoffV.graded).toBeCloseTo(gradedCutoff(1, 1), 12);
  expect(gradedModes(3.518)).toHaveLength(1);
  expect(gradedModes(3.5181)).toHaveLength(2);
});

test('deep in a large core the modes are those of the endless parabola, u² = 2V(2m + l − 1)', () => {
  for (const { l, m, u } of gradedModes(100).filter((mode) => mode.u < 50)) {
    // the tail beyond the edge, of order e^(−V + …), is below rounding
    expect(u / Math.sqrt(200 * (2 * m + l - 1))).toBeCloseTo(1, 13);
  }
  expect(modeFieldRadius(gradedModes(100)[0]!, 'petermann-2')).toBeCloseTo(Math.sqrt(2 / 100), 12);
});

test('LP01 at V = 2 has u = 1.8425, 8.5 % under the endless parabola', () => {
  // Source: packages/optics/reference/modes.json, gi-truncated-V2.0
  expect(gradedModes(2)[0]!.u).toBeCloseTo(1.842485329622056, 12);
});

test('each mode has m − 1 dark rings', () => {
  const rho = Float64Array.from({ length: 3000 }, (_, i) => (i + 1) / 1000);
  const field = new Float64Array(rho.length);
  for (const mode of gradedModes(37)) {
    fillRadialTable(mode, rho, field);
    let rings = 0;
    for (let i = 1; i < field.length; i++) if (field[i]! * field[i - 1]! < 0) rings++;
    expect(rings, `LP${mode.l},${mode.m}`).toBe(mode.m - 1);
    expect(field[0]).toBeGreaterThanOrEqual(0);
  }
});

test('outside 0.3 … 200 it is refused, at the ends it is answered', () => {
  expect(gradedModes(0.3)).toHaveLength(1);
  for (const v of [0.299, 200.1, Number.NaN, 0]) expect(() => gradedModes(v)).toThrow(OutOfRange);
});

test('at V = 200 there are about V²/16 LP modes and each stands alone', () => {
  const modes = gradedModes(200);
  // V²/4 with both degeneracies is V²/8 with orientation; the count lacks its rim, of relative order 4/V
  expect(Math.abs(countModes(modes).withOrientation / (200 ** 2 / 8) - 1)).toBeLessThan(4 / 200);
  expect(new Set(modes.map(({ l, m }) => `${l},${m}`)).size).toBe(modes.length);
});
