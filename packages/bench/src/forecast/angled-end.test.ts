import { expect, test } from 'vitest';
import { readLaunch } from '../launch/read-launch.ts';
import { forecast } from './forecast.ts';

/**
 * Computed with scipy 1.17: the beam of H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966), on the facet of a fibre polished at
 * 8°, in the plane of the wedge wider by cos 8°/cos θ with sin θ = n sin 8° (Snell; n of I. H. Malitson, J. Opt. Soc. Am. 55, 1205
 * (1965)): widths and offsets by 1.01128, tilts by its inverse, the curvature's radius by its square. Overlap with LP01 of
 * D. Gloge, Appl. Opt. 10, 2252 (1971), by Gauss-Legendre over r and trapezoid over φ, two grids agreeing to 1e-9.
 * One power of the factor wrong anywhere moves it by 6e-4 to 4e-3.
 */
test('an angled end widens spot, offset and defocus in its plane and straightens tilts', () => {
  const launch = readLaunch(
    `coreward: 1
laser:
  wavelength: 633 nm
  power: 1 mW
  beam: { waist diameter: 5 µm, waist position: -60 µm, quality: 1 }
collimator: none
fibre: { core diameter: 4 µm, numerical aperture: 0.12, ends: { in: angled 8° } }
misalignment: { x: 0.7 µm, y: -0.4 µm, tilt x: -40 mrad, tilt y: 15 mrad, defocus: 0 µm }
`,
    'angled.yaml',
  );
  // the forecast sums modes to 1e-7
  expect(forecast(launch, { draws: 16, seed: 1 }).coupling.fundamental).toBeCloseTo(0.26091261, 6);
});
