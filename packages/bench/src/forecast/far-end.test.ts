import { expect, test } from 'vitest';
import { readLaunch } from '../launch/read-launch.ts';
import { forecast } from './forecast.ts';

const outputOf = (wavelength: string, waist: string, fibre: string, misalignment: string) =>
  forecast(
    readLaunch(
      `coreward: 1
laser: { wavelength: ${wavelength}, power: 1 mW, beam: { waist diameter: ${waist}, waist position: 0 µm, quality: 1 } }
collimator: none
fibre: ${fibre}
misalignment: { ${misalignment} }
`,
      'far-end.yaml',
    ),
    { draws: 16, seed: 1 },
  ).output;

/**
 * Computed with scipy 1.17: V = 4.9604, LP01, LP11, LP21 and LP02 of D. Gloge, Appl. Opt. 10, 2252 (1971); their powers by
 * quadrature of the overlap (0.68215, 0.22675, 0.01872, 0.02063), ⟨r²⟩ and ⟨|∇ψ|²⟩ of each by Gauss-Legendre; 1/e² sizes from
 * second moments by ISO 11146-1 (from memory): √(2⟨r²⟩), and the sine √(2⟨|∇ψ|²⟩)·λ/2π.
 */
test('few modes that share the light leave as wide and as steep as their second moments together', () => {
  const output = outputOf('532 nm', '5 µm', '{ core diameter: 6 µm, numerical aperture: 0.14 }', 'x: 1.5 µm');
  // slopes by differences were good to 3e-9
  expect(output.diameter).toBeCloseTo(5.31726998e-6, 13);
  expect(output.fullDivergence).toBeCloseTo(0.174635382, 8);
});

/** A Gaussian of waist 20 µm opens by λ/(πw₀) = 10.074 mrad either way (Kogelnik and Li 1966); the rays of a step core keep it. */
test('of many modes in a step core the light leaves as wide as the core and as steep as it was launched', () => {
  const output = outputOf('633 nm', '40 µm', '{ type: step 105/125 NA 0.22 }', 'x: 0 µm');
  expect(output.diameter).toBeCloseTo(105e-6, 12);
  // 4096 rays tell a mean square to about a hundredth
  expect(output.fullDivergence / (2 * 10.074e-3)).toBeCloseTo(1, 1.5);
});
