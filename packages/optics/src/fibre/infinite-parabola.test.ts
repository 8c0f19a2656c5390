import { expect, test } from 'vitest';
import reference from '../../reference/modes.json' with { type: 'json' };
import { OutOfRange } from '../out-of-range.ts';
import { parabolaGroups, parabolaModeRadius } from './infinite-parabola.ts';
import { modeCountEstimate } from './mode-count.ts';
import { coreIndex, effectiveIndex, vNumber } from './v-number.ts';

interface ParabolicCase {
  readonly id: string;
  readonly inputs: {
    readonly coreRadius_m: number;
    readonly numericalAperture: number;
    readonly wavelength_m: number;
    readonly claddingIndex: number;
  };
  readonly expected: {
    readonly V: number;
    readonly coreIndex: number;
    readonly modeRadius_m: number;
    readonly groupCount: number;
    readonly guidedWithOrientation: number;
    readonly guidedLmCount: number;
    readonly estimateV2over4: number;
    readonly groups: readonly {
      readonly group: number;
      readonly u: number;
      readonly b: number;
      readonly nEff: number;
      readonly scalarModes: number;
    }[];
    readonly lp01: { readonly mfd_m: number; readonly farField1e2_sinTheta: number };
  };
}

const cases = reference.cases.filter(
  ({ kind }) => kind === 'parabolic-infinite',
) as unknown as readonly ParabolicCase[];

// Source of every row: packages/optics/reference/modes.json (closed forms). 1e-12: some roundings.
for (const { id, inputs, expected } of cases) {
  test(`${id}: groups, their counts and the fundamental's width`, () => {
    const { coreRadius_m: coreRadius, numericalAperture, wavelength_m: wavelength, claddingIndex } = inputs;
    const v = vNumber({ coreRadius, numericalAperture }, wavelength);
    expect(v).toBeCloseTo(expected.V, 12);
    expect(coreIndex(claddingIndex, numericalAperture)).toBeCloseTo(expected.coreIndex, 14);
    const groups = parabolaGroups(v);
    expect(groups).toHaveLength(expected.groupCount);
    expect(groups.reduce((sum, { withOrientation }) => sum + withOrientation, 0)).toBe(
      expected.guidedWithOrientation,
    );
    expect(groups.reduce((sum, { lpModes }) => sum + lpModes, 0)).toBe(expected.guidedLmCount);
    expect(modeCountEstimate('graded', v)).toBeCloseTo(expected.estimateV2over4, 9);
    for (const row of expected.groups) {
      const group = groups[row.group - 1]!;
      expect(group.group).toBe(row.group);
      expect(group.u).toBeCloseTo(row.u, 12);
      expect(group.b).toBeCloseTo(row.b, 13);
      expect(effectiveIndex(group.b, claddingIndex, numericalAperture)).toBeCloseTo(row.nEff, 13);
      expect(group.withOrientation).toBe(row.scalarModes);
    }
    const radius = parabolaModeRadius(v) * coreRadius;
    expect(radius / expected.modeRadius_m).toBeCloseTo(1, 12);
    expect((2 * radius) / expected.lp01.mfd_m).toBeCloseTo(1, 12);
    expect(wavelength / (Math.PI * radius) / expected.lp01.farField1e2_sinTheta).toBeCloseTo(1, 12);
  });
}

test('a group exactly at cut-off, g = V/2, is not guided', () => {
  expect(parabolaGroups(6)).toHaveLength(2);
  expect(parabolaGroups(6.001)).toHaveLength(3);
  expect(parabolaGroups(1.9)).toHaveLength(0);
});

test('V of nothing is refused', () => {
  expect(() => parabolaGroups(0)).toThrow(OutOfRange);
  expect(() => parabolaModeRadius(-1)).toThrow(OutOfRange);
});
