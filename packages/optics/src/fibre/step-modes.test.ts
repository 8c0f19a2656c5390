import { expect, test } from 'vitest';
import reference from '../../reference/modes.json' with { type: 'json' };
import { besselZero } from '../numerics/bessel-zero.ts';
import { OutOfRange } from '../out-of-range.ts';
import { fillRadialTable } from './guided-mode.ts';
import { normalisedPropagation } from './lp-mode.ts';
import { countModes, modeCountEstimate } from './mode-count.ts';
import { coreFraction } from './radial-integral.ts';
import { stepModes } from './step-modes.ts';
import { coreIndex, effectiveIndex, lp11CutoffWavelength, vNumber } from './v-number.ts';

interface StepCase {
  readonly id: string;
  readonly numericalError: number;
  readonly inputs: {
    readonly coreRadius_m: number;
    readonly numericalAperture: number;
    readonly wavelength_m: number;
    readonly claddingIndex: number;
  };
  readonly expected: {
    readonly V: number;
    readonly coreIndex: number;
    readonly guidedLmCount: number;
    readonly guidedWithOrientation: number;
    readonly guidedWithOrientationAndPolarisation: number;
    readonly estimateV2over2: number;
    readonly lp11CutoffWavelength_m: number;
    readonly singleMode: boolean;
    readonly modes: readonly {
      readonly l: number;
      readonly m: number;
      readonly u: number;
      readonly w: number;
      readonly b: number;
      readonly nEff: number;
      readonly coreFraction: number;
      readonly cutoffV: number;
      readonly orientations: number;
    }[];
  };
}

const cases = reference.cases.filter(({ kind }) => kind === 'step-lp') as unknown as readonly StepCase[];

// Source of every row: packages/optics/reference/modes.json (SciPy roots, checked there against 30-digit mpmath roots).
for (const { id, inputs, expected, numericalError } of cases) {
  const guide = { coreRadius: inputs.coreRadius_m, numericalAperture: inputs.numericalAperture };
  const v = vNumber(guide, inputs.wavelength_m);

  test(`${id}: every mode listed has its u, w, b, index, core fraction and cut-off`, () => {
    expect(v).toBeCloseTo(expected.V, 12);
    expect(coreIndex(inputs.claddingIndex, guide.numericalAperture)).toBeCloseTo(expected.coreIndex, 14);
    expect(lp11CutoffWavelength(guide, 'step') / expected.lp11CutoffWavelength_m).toBeCloseTo(1, 13);
    const modes = stepModes(v);
    // The file's own error, in u of order 1; at u of order V rounding of V itself takes part: 1e-15·V.
    const tolerance = numericalError + 1e-14 + 1e-15 * v;
    for (const row of expected.modes) {
      const mode = modes.find(({ l, m }) => l === row.l && m === row.m);
      expect(mode, `LP${row.l},${row.m} is guided`).toBeDefined();
      expect(Math.abs(mode!.u - row.u)).toBeLessThan(tolerance);
      expect(Math.abs(mode!.w - row.w)).toBeLessThan((tolerance * v) / row.w); // w² = V² − u²
      const b = normalisedPropagation(mode!);
      expect(Math.abs(b - row.b)).toBeLessThan(tolerance);
      expect(effectiveIndex(b, inputs.claddingIndex, guide.numericalAperture)).toBeCloseTo(row.nEff, 12);
      // 1e-9, the worst the file claims (V = 0.8, where w and with it Γ are small)
      expect(Math.abs(coreFraction(mode!) - row.coreFraction)).toBeLessThan(1e-9);
      expect(Math.abs(mode!.cutoffV - row.cutoffV)).toBeLessThan(1e-13 * v);
    }
  });

  test(`${id}: as many modes are guided as there should be`, () => {
    const modes = stepModes(v);
    const counted = countModes(modes);
    expect(counted.lpModes).toBe(expected.guidedLmCount);
    expect(counted.withOrientation).toBe(expected.guidedWithOrientation);
    expect(2 * counted.withOrientation).toBe(expected.guidedWithOrientationAndPolarisation);
    expect(modes.length === 1).toBe(expected.singleMode);
    expect(modeCountEstimate('step', v)).toBeCloseTo(expected.estimateV2over2, 9);
    // deepest first
    expect(modes.every((mode, i) => i === 0 || mode.u >= modes[i - 1]!.u)).toBe(true);
  });
}

// Source: the same file, zeros of Bessel functions (SciPy); 2.405, 3.832, 5.136, 5.520 are in every text (Gloge 1971).
test('modes appear at the zeros of Bessel functions', () => {
  const { stepIndex } = reference.cases.find(({ id }) => id === 'anchor-cutoffs')!.expected as unknown as {
    readonly stepIndex: readonly { readonly l: number; readonly m: number; readonly cutoffV: number }[];
  };
  const modes = stepModes(16);
  for (const row of stepIndex) {
    const mode = modes.find(({ l, m }) => l === row.l && m === row.m)!;
    expect(Math.abs(mode.cutoffV - row.cutoffV)).toBeLessThan(1e-12);
  }
});

test('just below its cut-off a mode is not guided, just above it is', () => {
  for (const [l, m, zero] of [
    [1, 1, besselZero(0, 1)],
    [2, 1, besselZero(1, 1)],
    [3, 2, besselZero(2, 2)],
    [40, 3, besselZero(39, 3)],
  ] as const) {
    const guided = (v: number) => stepModes(v).some((mode) => mode.l === l && mode.m === m);
    expect(guided(zero * (1 - 1e-9))).toBe(false);
    expect(guided(zero * (1 + 1e-9))).toBe(true);
  }
});

test('LP02 near its cut-off spreads as w = exp(−1/(c(V − c))), not as a power', () => {
  // From u J₁/J₀ = w K₁/K₀ with J₁(c) = 0: c (V − c) ≈ 1/ln(2e^(−γ)/w), γ = 0.5772. The next order is V − c relative.
  const c = besselZero(1, 1);
  for (const above of [0.02, 0.01]) {
    const lp02 = stepModes(c + above).find(({ l, m }) => l === 0 && m === 2)!;
    const predicted = 1 / Math.log((2 * Math.exp(-0.5772156649)) / lp02.w);
    expect(predicted / (c * above)).toBeGreaterThan(1 - 2 * above);
    expect(predicted / (c * above)).toBeLessThan(1 + 2 * above);
  }
});

test('field and slope of every mode are continuous at the core edge', () => {
  const h = 1e-4;
  for (const v of [1.1, 6, 45]) {
    for (const mode of stepModes(v)) {
      const r = new Float64Array(6);
      fillRadialTable(mode, Float64Array.of(1 - 2 * h, 1 - h, 1, 1 + 1e-15, 1 + h, 1 + 2 * h), r);
      expect(r[3]).toBeCloseTo(r[2]!, 10);
      // one-sided slopes to second order; the error is h²R'''/3 with R''' ≤ v³·R and R ≤ v
      const inside = (3 * r[2]! - 4 * r[1]! + r[0]!) / (2 * h);
      const outside = (-3 * r[3]! + 4 * r[4]! - r[5]!) / (2 * h);
      expect(Math.abs(inside - outside)).toBeLessThan(h * h * v ** 4 + 1e-8);
    }
  }
});

test('u of a mode grows smoothly with V, from its cut-off towards the next zero', () => {
  let last = 0;
  for (let v = 2.5; v < 60; v += 0.5) {
    const { u } = stepModes(v).find(({ l, m }) => l === 1 && m === 1)!;
    expect(u).toBeGreaterThan(last);
    expect(u).toBeLessThan(besselZero(1, 1));
    // Gloge 1971 (from memory): du/dV = (u/V)(1 − K_l²/(K_{l−1}K_{l+1})) ≤ u/V
    if (last > 0) expect(u - last).toBeLessThan((0.5 * u) / (v - 0.5));
    last = u;
  }
});

test('far above cut-off u tends to j·V/(V + 1)', () => {
  // Gloge 1971 (from memory), from w K_{l+1}/K_l ≈ w + l + 1/2 with w ≈ V; the next order is below (l + 1)/V² relative
  const v = 300;
  for (const [l, m] of [
    [0, 1],
    [3, 2],
  ] as const) {
    const { u } = stepModes(v).find((mode) => mode.l === l && mode.m === m)!;
    const j = besselZero(l, m);
    expect(Math.abs(u / ((j * v) / (v + 1)) - 1)).toBeLessThan((l + 1) / v ** 2);
    expect(Math.abs(u / j - 1)).toBeGreaterThan(0.9 / v);
  }
});

test('a fibre that hardly guides, and one with tens of thousands of modes, are answered; beyond they are refused', () => {
  expect(stepModes(0.2)).toHaveLength(1);
  expect(stepModes(0.2)[0]!.w).toBeLessThan(1e-20);
  // the estimate counts polarisation, too; it errs by the rim of the count, of the order 1/V
  const many = 2 * countModes(stepModes(400)).withOrientation;
  expect(Math.abs(many / modeCountEstimate('step', 400) - 1)).toBeLessThan(4 / 400);
  for (const v of [0.199, 400.1, Number.NaN, -3]) expect(() => stepModes(v)).toThrow(OutOfRange);
});
