import { expect, test } from 'vitest';
import { readLaunch } from '../launch/read-launch.ts';
import { forecast } from './forecast.ts';

/** A spot far wider than the core: no collimator, as somebody first tries it. */
const bare = (fibre: string, waist = '0.6 mm') =>
  forecast(
    readLaunch(
      `coreward: 1
laser: { wavelength: { value: 633 nm within 0.001 nm }, power: 1 mW, beam: { waist diameter: ${waist} within 0.001 mm, waist position: 0 mm within 0.001 mm, quality: 1 } }
collimator: none
fibre: ${fibre}
misalignment: { x: 0 µm }
`,
      'bare.yaml',
    ),
  );

/**
 * A disc that is evenly lit takes light as its area grows: the share goes with the square of the core. The core's 5 % and 95 %
 * points are 47.533 µm and 52.467 µm (a normal of 1.5 µm, quantile 1.6449), so the share's stand as (52.467/47.533)² = 1.2184. The
 * even draws place each end within some hundredths of the width.
 */
test.each([
  ['few rays', '0.6 mm'],
  ['hardly a ray', '6 mm'],
])('of a spot far wider than the core the range follows the core’s area: %s', (_, waist) => {
  const { coupling } = bare(
    '{ profile: step, core diameter: 50 µm ± 1.5 µm, numerical aperture: 0.22 within 0.0001, length: 2 m }',
    waist,
  );
  const { low, high } = coupling.guidedInterval;
  expect(high / low).toBeGreaterThan(1.19);
  expect(high / low).toBeLessThan(1.25);
});
