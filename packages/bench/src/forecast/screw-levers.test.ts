import { expect, test } from 'vitest';
import { readLaunch } from '../launch/read-launch.ts';
import { asStated } from './draw.ts';
import { wayToTheLens } from './way-to-the-facet.ts';

const levers = (path: string) =>
  wayToTheLens(
    readLaunch(
      `coreward: 1
laser: { wavelength: 633 nm, power: 1 mW, beam: { waist diameter: 1 mm } }
path: ${path}
collimator: { focal length: 8 mm }
fibre: { core diameter: 4 µm, numerical aperture: 0.12 }
`,
      'levers.yaml',
    ),
    asStated,
  ).levers;

/**
 * Rays by hand (elementary): a mirror that tilts by 1 turns the beam by 2 in the plane of incidence and by 2 cos 45° across
 * it; over d₁ = 300 mm that is an offset, a lens of f = 200 mm takes offset/f off the slope, and d₂ = 400 mm adds up again.
 */
test('a screw’s turn goes through a lens on the way as a ray does', () => {
  const found = levers(
    '[space: 50 mm, mirror: { name: M1, angle: 45°, mount: {} }, space: 300 mm, lens: { focal length: 200 mm }, space: 400 mm]',
  );
  const turns = { horizontal: 2, vertical: Math.SQRT2 };
  for (const { axis, offsetPerTilt, slopePerTilt } of found) {
    expect(slopePerTilt).toBeCloseTo(turns[axis] * (1 - 0.3 / 0.2), 12);
    expect(offsetPerTilt).toBeCloseTo(turns[axis] * (0.3 + 0.4 * (1 - 0.3 / 0.2)), 12);
  }
  expect(found.map(({ axis }) => axis)).toEqual(['horizontal', 'vertical']);
});
