import { expect, test } from 'vitest';
import { besselJ } from '../numerics/bessel-j.ts';
import { besselZero } from '../numerics/bessel-zero.ts';
import { gaussLegendreOn } from '../numerics/gauss-legendre.ts';
import { OutOfRange } from '../out-of-range.ts';
import { gradedModes } from './graded-modes.ts';
import {
  fillRadialTable,
  fillRadialTables,
  fillSpectrumTable,
  fillSpectrumTables,
  type GuidedMode,
  radialField,
  spectrum,
} from './guided-mode.ts';
import { outerRadius } from './outer-radius.ts';
import { coreFraction } from './radial-integral.ts';
import { stepModes } from './step-modes.ts';

/** A quadrature of this test's own: dense panels, quarter ones over the core, growing ones beyond. */
function panels(end: number, width: number) {
  const list = [];
  for (let low = 0; low < end; ) {
    const high = low < 1 ? low + 0.25 : low + Math.min(width, 0.3 * low);
    list.push(gaussLegendreOn(low, high, 24));
    low = high;
  }
  return list;
}

function fieldOn(mode: GuidedMode, nodes: Float64Array): Float64Array {
  const field = new Float64Array(nodes.length);
  fillRadialTable(mode, nodes, field);
  return field;
}

const sets: readonly { readonly name: string; readonly modes: readonly GuidedMode[] }[] = [
  { name: 'step, V = 1.5', modes: stepModes(1.5) },
  { name: 'step, V = 6', modes: stepModes(6) },
  { name: 'step, V = 25', modes: stepModes(25) },
  { name: 'graded, V = 2', modes: gradedModes(2) },
  { name: 'graded, V = 8', modes: gradedModes(8) },
  { name: 'graded, V = 40', modes: gradedModes(40) },
];

for (const { name, modes } of sets) {
  // modes within 0.3 of their cut-off reach too far out for a plain quadrature
  const compact = modes.filter(({ w }) => w > 0.3);

  test(`${name}: modes carry unit power and modes of one l share none`, () => {
    for (const mode of compact) {
      const grid = panels(1 + 45 / mode.w, Math.min(0.25 + 1 / mode.w, 3));
      const partners = compact.filter(({ l, m }) => l === mode.l && m >= mode.m);
      for (const partner of partners) {
        let shared = 0;
        for (const { nodes, weights } of grid) {
          const one = fieldOn(mode, nodes);
          const other = fieldOn(partner, nodes);
          for (let i = 0; i < nodes.length; i++) shared += weights[i]! * nodes[i]! * one[i]! * other[i]!;
        }
        // Exact: 1 and 0. 1e-11: rounding of u, 1e-14·V, mixes neighbours in this proportion over their distance.
        expect(
          Math.abs(shared - (partner === mode ? 1 : 0)),
          `${mode.l} ${mode.m} ${partner.m}`,
        ).toBeLessThan(1e-11);
      }
    }
  });

  test(`${name}: the far field is the Hankel transform of the near field, at Q = u as elsewhere`, () => {
    for (const mode of compact.filter((_, i) => i % Math.ceil(compact.length / 12) === 0)) {
      const grid = panels(1 + 45 / mode.w, 0.25);
      const { u, l } = mode;
      const qs = Float64Array.of(
        0,
        0.4 * u,
        u - 0.021,
        u - 0.019,
        u - 1e-7,
        u,
        u + 3e-3,
        u + 0.0201,
        1.6 * u,
      );
      const sines = new Float64Array(qs.length);
      fillSpectrumTable(mode, qs, sines);
      for (const [i, q] of qs.entries()) {
        let sum = 0;
        for (const { nodes, weights } of grid) {
          const field = fieldOn(mode, nodes);
          for (let k = 0; k < nodes.length; k++) {
            sum += weights[k]! * nodes[k]! * field[k]! * besselJ(l, q * nodes[k]!);
          }
        }
        // two routes of some hundred roundings each; S itself is of order 1
        expect(Math.abs(sines[i]! - sum), `LP${l},${mode.m} at Q = ${q}`).toBeLessThan(3e-12);
        expect(spectrum(mode, q)).toBeCloseTo(sines[i]!, 12);
      }
    }
  });
}

test('tables of many modes hold what each mode gives alone', () => {
  const rho = Float64Array.from({ length: 40 }, (_, i) => i * 0.033);
  const q = Float64Array.from({ length: 40 }, (_, i) => i * 0.9);
  const alone = new Float64Array(40);
  // mixed profiles, too
  for (const modes of [stepModes(30), gradedModes(30), [...stepModes(4), ...gradedModes(5)]]) {
    const fields = new Float64Array(40 * modes.length);
    const spectra = new Float64Array(40 * modes.length);
    fillRadialTables(modes, rho, fields);
    fillSpectrumTables(modes, q, spectra);
    for (const [k, mode] of modes.entries()) {
      fillRadialTable(mode, rho, alone);
      for (let i = 0; i < 40; i++) {
        // 2e-15 of a table of J, times an amplitude of up to V
        expect(Math.abs(fields[k * 40 + i]! - alone[i]!)).toBeLessThan(1e-13);
      }
      fillSpectrumTable(mode, q, alone);
      for (let i = 0; i < 40; i++) expect(Math.abs(spectra[k * 40 + i]! - alone[i]!)).toBeLessThan(1e-13);
    }
  }
});

// Parseval's theorem for the Hankel transform: ∫S²Q dQ = ∫R²ρ dρ = 1.
test('near field and far field hold the same power', () => {
  for (const mode of [...stepModes(6), ...gradedModes(8)].filter(({ w }) => w > 0.5)) {
    let power = 0;
    for (const { nodes, weights } of panels(240, 2)) {
      const field = new Float64Array(nodes.length);
      fillSpectrumTable(mode, nodes, field);
      for (let i = 0; i < nodes.length; i++) power += weights[i]! * nodes[i]! * field[i]! ** 2;
    }
    // R'' jumps by V²R(1), so S ≈ V²R(1)·√(2/π)·Q^−3.5 and 2V⁴R(1)²/(5π Q⁵) of the power lies beyond Q = 240
    const beyond = (2 * mode.vNumber ** 4 * mode.edgeAmplitude ** 2) / (5 * Math.PI * 240 ** 5);
    expect(Math.abs(power - 1)).toBeLessThan(beyond + 1e-12);
  }
});

test('modes near their cut-off keep unit power in closed form, however far they reach', () => {
  // LP21 at a hundred-millionth above cut-off: half its power is in the core, Γ = 1 − 1/l (Gloge 1971, from memory)
  const near = stepModes(3.8317059702075125 * (1 + 1e-8)).find(({ l }) => l === 2)!;
  expect(coreFraction(near)).toBeCloseTo(0.5, 5);
  // l = 10: 1 − 1/10. The cut-off is the first zero of J9, 13.35430047743533 (modes.json, SciPy)
  const steep = stepModes(13.35430047743533 * (1 + 1e-8)).find(({ l, m }) => l === 10 && m === 1)!;
  expect(coreFraction(steep)).toBeCloseTo(0.9, 6);
});

test('large orders near cut-off fall as ρ^−l, though K_l itself overflows there', () => {
  // LP100,1 just above its cut-off, the first zero of J99: K_100(w) is about 1e415. For small w
  // K_l(wρ)/K_l(w) → ρ^−l (1 − w²(ρ² − 1)/(4(l − 1))): Abramowitz & Stegun 9.6.9 and its next term (from memory)
  const cutoff = besselZero(99, 1);
  const mode = stepModes(cutoff * (1 + 1e-9)).find(({ l, m }) => l === 100 && m === 1)!;
  expect(mode.w).toBeLessThan(0.02);
  for (const rho of [1.5, 10, 100]) {
    const expected = (1 - (mode.w ** 2 * (rho ** 2 - 1)) / 396) * mode.edgeAmplitude;
    expect(radialField(mode, rho) / rho ** -100 / expected).toBeCloseTo(1, rho < 50 ? 8 : 3);
  }
});

test('the field is positive near the axis and touches zero there for l ≥ 1', () => {
  for (const mode of [...stepModes(12), ...gradedModes(12)]) {
    expect(radialField(mode, 0.02)).toBeGreaterThan(0);
    if (mode.l > 0) expect(radialField(mode, 0)).toBe(0);
  }
});

test('from its outer radius on the field stays below the amplitude asked', () => {
  for (const mode of [stepModes(2.2)[0]!, stepModes(6).at(-1)!, gradedModes(5).at(-1)!]) {
    const rho = outerRadius(mode, 1e-6);
    expect(Math.abs(radialField(mode, rho)) / 1e-6).toBeCloseTo(1, 8);
    expect(Math.abs(radialField(mode, rho * 1.01))).toBeLessThan(1e-6);
    expect(outerRadius(mode, 100)).toBe(1);
  }
  expect(() => outerRadius(stepModes(2)[0]!, 0)).toThrow(OutOfRange);
});

test('negative radii and wave numbers are refused', () => {
  const mode = stepModes(2)[0]!;
  expect(() => radialField(mode, -0.1)).toThrow(OutOfRange);
  expect(() => spectrum(mode, -0.1)).toThrow(OutOfRange);
  expect(() => spectrum(mode, Number.NaN)).toThrow(OutOfRange);
});
