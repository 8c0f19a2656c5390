import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRange } from '../out-of-range.ts';
import { powerInsideCircle } from './intensity-profile.ts';
import {
  type EllipticSpot,
  powerThroughAperture,
  roundApertureAtIncidence,
} from './power-through-aperture.ts';

/** Spots and holes, m and rad, and the fraction that passes. */
const quadrature = {
  source:
    'two-dimensional integral of the Gaussian over the ellipse: one axis by erf of the conditional profile, the other by tanh-sinh quadrature in 64 pieces',
  obtained: 'computed with mpmath 1.3.0 at 30 digits',
  rows: [
    // radiusX, radiusY, azimuth, centreX, centreY, semiAxisX, semiAxisY, passes
    [1e-3, 0.6e-3, 0.4, 0.3e-3, -0.5e-3, 1.5e-3, 1.1e-3, 0.932436948063035],
    [1e-3, 1e-3, 0, 2.5e-3, 0, 2.5e-3, 2.5e-3, 0.459901613226282], // centre on the rim
    [0.1e-3, 0.1e-3, 0, 2.5e-3, 0, 2.5e-3, 2.5e-3, 0.496010377679946], // a narrow beam on the rim: nearly a half plane
    [10e-3, 3e-3, 1, 1e-3, 2e-3, 2e-3, 1e-3, 0.101043223155888], // a pinhole in a wide beam
    [0.5e-3, 0.9e-3, 0.3, 7e-3, 2e-3, 7.8e-3, 11e-3, 0.994575431296117], // a mirror at 45°, clipped at its edge
    [1e-3, 0.02e-3, 0.6, 0.5e-3, 0, 1e-3, 1e-3, 0.85980436374839], // a line focus, 50 to 1
    [0.6e-3, 0.6e-3, 0, 0, 0, 0.707e-3, 1e-3, 0.971118179455341],
    [0.8e-3, 0.8e-3, 0, 1.9e-3, 0.4e-3, 1.1e-3, 1.1e-3, 0.0125125720902066], // it mostly misses
  ],
} as const;

describe(`what a hole lets through: ${quadrature.obtained}`, () => {
  test.each(quadrature.rows)('radii %f, %f m turned by %f at %f, %f m through %f, %f m', (...row) => {
    const [radiusX, radiusY, azimuth, centreX, centreY, semiAxisX, semiAxisY, passes] = row;
    const power = powerThroughAperture(
      { radiusX, radiusY, azimuth, centreX, centreY },
      { semiAxisX, semiAxisY },
    );
    // what powerThroughAperture promises
    expect(Math.abs(power - passes)).toBeLessThan(1e-12);
  });
});

const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anySpot: fc.Arbitrary<EllipticSpot> = fc.record({
  radiusX: metres(0.2e-3, 3e-3),
  radiusY: metres(0.2e-3, 3e-3),
  azimuth: metres(-4, 4),
  centreX: metres(-3e-3, 3e-3),
  centreY: metres(-3e-3, 3e-3),
});
const anyHole = fc.record({ semiAxisX: metres(0.3e-3, 4e-3), semiAxisY: metres(0.3e-3, 4e-3) });

describe('any spot and any hole', () => {
  test('no more passes than arrives, and a larger hole passes more', () => {
    fc.assert(
      fc.property(anySpot, anyHole, (spot, hole) => {
        const power = powerThroughAperture(spot, hole);
        expect(power).toBeGreaterThanOrEqual(0);
        expect(power).toBeLessThanOrEqual(1);
        const larger = { semiAxisX: hole.semiAxisX * 1.1, semiAxisY: hole.semiAxisY };
        expect(powerThroughAperture(spot, larger)).toBeGreaterThanOrEqual(power - 1e-12);
      }),
    );
  });

  test('mirrored, named the other way round, or all enlarged: the same passes', () => {
    fc.assert(
      fc.property(anySpot, anyHole, metres(0.01, 100), (spot, hole, scale) => {
        const power = powerThroughAperture(spot, hole);
        const same = [
          powerThroughAperture({ ...spot, centreX: -spot.centreX, azimuth: -spot.azimuth }, hole),
          powerThroughAperture(
            { ...spot, radiusX: spot.radiusY, radiusY: spot.radiusX, azimuth: spot.azimuth + Math.PI / 2 },
            hole,
          ),
          powerThroughAperture(
            {
              radiusX: spot.radiusX * scale,
              radiusY: spot.radiusY * scale,
              azimuth: spot.azimuth,
              centreX: spot.centreX * scale,
              centreY: spot.centreY * scale,
            },
            { semiAxisX: hole.semiAxisX * scale, semiAxisY: hole.semiAxisY * scale },
          ),
        ];
        for (const other of same) expect(Math.abs(other - power)).toBeLessThan(1e-12);
      }),
    );
  });

  test('a decentred round beam in a round hole: the Rice distribution as a Poisson sum (noncentral χ², from memory)', () => {
    fc.assert(
      fc.property(metres(0.3e-3, 3e-3), metres(0, 2.5e-3), metres(0.3e-3, 3e-3), (radius, offset, hole) => {
        const poisson = 2 * (offset / radius) ** 2; // half the squared offset in standard deviations
        const reach = 2 * (hole / radius) ** 2;
        let weight = Math.exp(-poisson);
        let term = Math.exp(-reach); // of the gamma distribution's tail
        let tail = term;
        let passes = 0;
        for (let k = 0; k < 400; k++) {
          passes += weight * (1 - tail);
          weight *= poisson / (k + 1);
          term *= reach / (k + 1);
          tail += term;
        }
        const spot = {
          radiusX: radius,
          radiusY: radius,
          azimuth: 0.7,
          centreX: offset * 0.6,
          centreY: offset * 0.8,
        };
        const power = powerThroughAperture(spot, { semiAxisX: hole, semiAxisY: hole });
        expect(Math.abs(power - passes)).toBeLessThan(1e-12);
      }),
    );
  });

  test('half the power is inside 0.5887 w (circular error probable 1.1774 σ, from memory)', () => {
    const spot = { radiusX: 1, radiusY: 1, azimuth: 0, centreX: 1e-9, centreY: 0 };
    const hole = 1.1774100225154747 / 2;
    expect(powerThroughAperture(spot, { semiAxisX: hole, semiAxisY: hole })).toBeCloseTo(0.5, 12);
  });

  test('nearly centred is nearly the closed form', () => {
    const spot = { radiusX: 1e-3, radiusY: 1e-3, azimuth: 0, centreX: 1e-12, centreY: 0 };
    const power = powerThroughAperture(spot, { semiAxisX: 0.8e-3, semiAxisY: 0.8e-3 });
    expect(power).toBeCloseTo(powerInsideCircle(1e-3, 0.8e-3), 13);
  });

  test('no step where far inside and far outside are cut short', () => {
    // 8.5 standard deviations from a rim of 10 mm, on both sides and by a hair on either side of the rule
    for (const sigmas of [8.499999, 8.500001]) {
      const at = (centreX: number) =>
        powerThroughAperture(
          { radiusX: 1e-3, radiusY: 1e-3, azimuth: 0, centreX, centreY: 0 },
          { semiAxisX: 10e-3, semiAxisY: 10e-3 },
        );
      expect(Math.abs(at(10e-3 - sigmas * 0.5e-3) - 1)).toBeLessThan(1e-12);
      expect(at(10e-3 + sigmas * 0.5e-3)).toBeLessThan(1e-12);
    }
  });
});

describe('a mirror turned away', () => {
  test('at 45° it is narrower by √2 in its plane of incidence', () => {
    const face = roundApertureAtIncidence(11e-3, Math.PI / 4);
    expect(face.semiAxisX).toBeCloseTo(11e-3 / Math.SQRT2, 15);
    expect(face.semiAxisY).toBe(11e-3);
  });
  test('grazing is refused, a little less is not', () => {
    expect(() => roundApertureAtIncidence(11e-3, Math.PI / 2)).toThrow(OutOfRange);
    expect(() => roundApertureAtIncidence(11e-3, Math.PI / 2 - 1e-6)).not.toThrow();
  });
});

test('spots and holes that cannot be are refused', () => {
  const spot = { radiusX: 1e-3, radiusY: 1e-3, azimuth: 0, centreX: 0, centreY: 0 };
  const hole = { semiAxisX: 1e-3, semiAxisY: 1e-3 };
  expect(() => powerThroughAperture({ ...spot, radiusY: 0 }, hole)).toThrow(OutOfRange);
  expect(() => powerThroughAperture({ ...spot, centreX: Number.NaN }, hole)).toThrow(OutOfRange);
  expect(() => powerThroughAperture(spot, { ...hole, semiAxisX: -1e-3 })).toThrow(OutOfRange);
});
