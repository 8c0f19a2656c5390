import { expect, test } from 'vitest';
import { acrylicMixing, balancedAngleSquared, mixedAngleSquared } from './mode-mixing.ts';

/**
 * ⟨θ²⟩/θ_c² by the power-flow equation ∂P/∂z = (D/θ)∂(θ∂P/∂θ)/∂θ, P(θ_c) = 0, solved on a grid: explicit steps of rings of
 * equal width, which keep the power but for what crosses the edge. `travelled` is Dz/θ_c².
 */
function solved(before: number, travelled: number): number {
  const rings = 200;
  const width = 1 / rings;
  const middle = (i: number) => (i + 0.5) * width;
  // a narrow start is a Gaussian in the angle, as a focused beam is
  let power = Float64Array.from({ length: rings }, (_, i) => Math.exp(-(middle(i) ** 2) / before));
  const step = 0.2 * width ** 2;
  const steps = Math.round(travelled / step);
  for (let n = 0; n < steps; n += 1) {
    power = power.map((here, i) => {
      const inner = i === 0 ? 0 : (i * width * (here - power[i - 1]!)) / width;
      const outer = ((i + 1) * width * ((i === rings - 1 ? -here : power[i + 1]!) - here)) / width;
      return here + (step * (outer - inner)) / (middle(i) * width);
    });
  }
  let sum = 0;
  let mean = 0;
  power.forEach((here, i) => {
    sum += here * middle(i);
    mean += here * middle(i) ** 3;
  });
  return mean / sum;
}

/** A fibre in which Dz/θ_c² is this. */
const after = (travelled: number) => ({ numericalAperture: 0.5, index: 1, length: 1, mixing: travelled / 4 });

test.each([
  [0.01, 0.005],
  [0.01, 0.02],
  [0.01, 0.05],
  [0.01, 0.1],
  [0.01, 0.3],
  [0.1, 0.03],
])('⟨θ²⟩ of %s grows over Dz/θ_c² = %s as the power-flow equation has it', (before, travelled) => {
  const grown = mixedAngleSquared(before, after(travelled));
  // rings a 200th wide err by their square times a few, the edge between two rings by a part of one
  expect(Math.abs(grown / solved(before, travelled) - 1)).toBeLessThan(0.004);
});

test('first it grows by 4D a metre, and in the end it is that of J₀(j₀₁θ/θ_c)', () => {
  const short = mixedAngleSquared(0, after(1e-4));
  expect(short / 4e-4).toBeCloseTo(1, 2);
  expect(mixedAngleSquared(0, after(10))).toBeCloseTo(balancedAngleSquared, 12);
  // ∫J₀(j₀₁x)x³dx / ∫J₀(j₀₁x)xdx by the series J₀ = Σ(−x²/4)ᵏ/k!² (Abramowitz and Stegun 9.1.12, from memory)
  const moment = (power: number) => {
    let term = 1;
    let sum = 0;
    for (let k = 0; k < 30; k += 1) {
      sum += term / (2 * k + power + 1);
      term *= -(2.404825557695773 ** 2 / 4) / (k + 1) ** 2;
    }
    return sum;
  };
  expect(balancedAngleSquared).toBeCloseTo(moment(3) / moment(1), 12);
});

test('light that fills the aperture already stays as wide', () => {
  expect(mixedAngleSquared(0.5, after(0.1))).toBe(0.5);
});

test('what does not mix keeps its angles, and what is no length is refused', () => {
  expect(mixedAngleSquared(0.07, { ...after(0), length: 1e3 })).toBe(0.07);
  expect(() => mixedAngleSquared(0.07, { ...after(1), length: -1 })).toThrow('length');
});

test('acrylic fibre is filled within some ten metres, as its trade says', () => {
  // balance after some tens of metres is published for fibre of 1 mm and NA 0.5 (from memory)
  const at = (length: number) =>
    mixedAngleSquared(0, {
      numericalAperture: 0.5,
      index: 1.49,
      length,
      mixing: acrylicMixing.expected,
    });
  expect(at(3)).toBeLessThan(0.5 * balancedAngleSquared);
  expect(at(100)).toBeGreaterThan(0.95 * balancedAngleSquared);
});
