import { expect, test } from 'vitest';
import { endCone } from './fibre-end.ts';
import { launchOf } from './invented-benches.ts';

const { fibre } = launchOf({
  fibre:
    '{ profile: step, core diameter: 50 µm ± 0 µm, numerical aperture: 0.22 ± 0, cladding diameter: 125 µm, length: 2 m, attenuation: 10 dB/km }',
});

/**
 * A Gaussian as wide as the core, w₀ = 25 µm, opens by λ/(πw₀) = 8.0596 mrad at 1/e² (H. Kogelnik and T. Li, Appl. Opt. 5, 1550
 * (1966)), and falls to 5 % of its peak √(ln 20/2) = 1.22387 times as far out (mathematics): 9.8639 mrad.
 */
test('however narrow the light is launched, an end is taken to open as diffraction at its core makes it', () => {
  for (const launched of [null, 0, 1e-4]) {
    expect(endCone(fibre, 633e-9, launched, 'worse').numericalAperture).toBeCloseTo(9.8639e-3, 6);
  }
  // a cone that is wider is kept, up to the aperture of the fibre
  expect(endCone(fibre, 633e-9, 0.1, 'worse').numericalAperture).toBeCloseTo(0.1, 12);
  expect(endCone(fibre, 633e-9, 0.3, 'worse').numericalAperture).toBeCloseTo(0.22, 12);
});
