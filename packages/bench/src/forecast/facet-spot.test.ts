import { expect, test } from 'vitest';
import { readLaunch } from '../launch/read-launch.ts';
import { forecast } from './forecast.ts';

/**
 * Computed with numpy 2.4 from the field itself: second moments of |E|² on a grid of 3001 × 3001 points in three planes,
 * and the parabola through them; the field is that of H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966).
 */
test('of an astigmatic beam turned by 30° spot and waist are told along the axes of the lab', () => {
  const launch = readLaunch(
    `coreward: 1
laser:
  wavelength: 633 nm
  power: 1 mW
  beam:
    x: { waist diameter: 6 µm, waist position: -20 µm, quality: 1 }
    y: { waist diameter: 10 µm, waist position: 40 µm, quality: 1 }
    azimuth: 30°
collimator: none
fibre: { core diameter: 8 µm, numerical aperture: 0.12 }
`,
    'turned.yaml',
  );
  const { facet } = forecast(launch, { draws: 16, seed: 1 });
  // the field was cut off at 150 µm, where 1e-11 of it is left; nine digits are kept
  expect(facet.spotDiameterX).toBeCloseTo(7.74670218e-6, 14);
  expect(facet.spotDiameterY).toBeCloseTo(9.67466995e-6, 14);
  expect(facet.waistOffsetX).toBeCloseTo(-13.57142857e-6, 13);
  expect(facet.waistOffsetY).toBeCloseTo(11.15384615e-6, 13);
  expect(facet.waistDiameterX).toBeCloseTo(7.564375674e-6, 14);
  expect(facet.waistDiameterY).toBeCloseTo(9.614153693e-6, 14);
});
