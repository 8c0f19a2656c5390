import fc from 'fast-check';
import { expect, test } from 'vitest';
import { statedLimit } from '../../reference/hazard-cases.ts';
import { OutOfRange } from '../out-of-range.ts';
import {
  beyondFocusDistanceFrom1e,
  collimatedDistanceFrom1e,
  collimatedDistanceLinearFrom1e,
  ellipticDiodeDistanceFrom1e,
} from './beam-distance.ts';
import {
  collimatedMultimodeDistanceFrom5Percent,
  collimatedSingleModeDistanceFrom1e2,
} from './collimated-output-distance.ts';
import type { Exposure } from './exposure.ts';
import { powerAtLimit } from './exposure-limit.ts';
import {
  fewModeEndDistance,
  multimodeEndDistanceFrom5Percent,
  singleModeEndDistanceFrom1e2,
} from './fibre-end-distance.ts';
import { governingLimit, listed } from './governing-limit.ts';
import { type HazardDistance, type Judged, longestDistance } from './hazard-distance.ts';
import { reachIn } from './room-reach.ts';

const geometries: Readonly<Record<string, (one: Judged) => HazardDistance>> = {
  collimated: (one) => collimatedDistanceFrom1e({ ...one, exitDiameter1e: 1e-3, fullDivergence1e: 1e-3 }),
  'collimated, linear': (one) =>
    collimatedDistanceLinearFrom1e({ ...one, exitDiameter1e: 1e-3, fullDivergence1e: 1e-3 }),
  'collimated, over the stop': (one) =>
    collimatedDistanceFrom1e({
      ...one,
      exitDiameter1e: 1e-3,
      fullDivergence1e: 1e-3,
      form: 'averaged over the stop',
    }),
  'bare diode': (one) =>
    ellipticDiodeDistanceFrom1e({ ...one, fullDivergenceX1e: 0.1, fullDivergenceY1e: 0.4 }),
  'beyond a focus': (one) =>
    beyondFocusDistanceFrom1e({ ...one, focalLength: 11e-3, diameterOnLens1e: 1e-3 }),
  'single-mode end': (one) =>
    singleModeEndDistanceFrom1e2({ ...one, wavelength: 633e-9, modeFieldDiameter1e2: 4.3e-6 }),
  'multimode end': (one) =>
    multimodeEndDistanceFrom5Percent({
      ...one,
      fibreNumericalAperture5Percent: 0.22,
      launchNumericalAperture5Percent: 0.1,
    }),
  'few-mode end': (one) =>
    fewModeEndDistance({
      ...one,
      wavelength: 633e-9,
      modeFieldDiameter1e2: 6e-6,
      fibreNumericalAperture5Percent: 0.13,
      launchNumericalAperture5Percent: 0.13,
    }),
  'collimated single mode': (one) =>
    collimatedSingleModeDistanceFrom1e2({
      ...one,
      wavelength: 633e-9,
      modeFieldDiameter1e2: 4.3e-6,
      focalLength: 8e-3,
    }),
  'collimated multimode': (one) =>
    collimatedMultimodeDistanceFrom5Percent({
      ...one,
      coreDiameter: 50e-6,
      numericalAperture5Percent: 0.2,
      focalLength: 8e-3,
    }),
};

const power = fc.double({ min: -7, max: 2, noNaN: true }).map((exponent) => 10 ** exponent);
const irradiance = fc.double({ min: -1, max: 5, noNaN: true }).map((exponent) => 10 ** exponent);
const wider = fc.double({ min: 1, max: 1e4, noNaN: true });

for (const [name, distanceFor] of Object.entries(geometries)) {
  test(`${name}: more power never shortens the distance, nor does a lower limit; below nought there is none`, () => {
    fc.assert(
      fc.property(power, irradiance, wider, (watts, level, factor) => {
        const limit = statedLimit(level);
        const { distance } = distanceFor({ power: watts, limit });
        expect(distance).toBeGreaterThanOrEqual(0);
        expect(distanceFor({ power: watts * factor, limit }).distance).toBeGreaterThanOrEqual(distance);
        const stricter = statedLimit(level / factor);
        expect(distanceFor({ power: watts, limit: stricter }).distance).toBeGreaterThanOrEqual(distance);
      }),
    );
  });

  test(`${name}: up to the limit over the area of the stop the distance is nought, and said to be so`, () => {
    fc.assert(
      fc.property(irradiance, fc.double({ min: 0, max: 1, noNaN: true }), (level, share) => {
        const limit = statedLimit(level);
        const result = distanceFor({ power: powerAtLimit(limit) * share, limit });
        expect(result.distance).toBe(0);
        expect(result.form).toBe('under the limit everywhere');
      }),
    );
    const limit = statedLimit(10);
    expect(distanceFor({ power: powerAtLimit(limit) * 1.001, limit }).form).not.toBe(
      'under the limit everywhere',
    );
  });

  test(`${name}: a longer time and a smaller source never shorten it, and the longer of both sets is found`, () => {
    const time = fc.double({ min: 1, max: 4, noNaN: true }).map((exponent) => 10 ** exponent);
    fc.assert(
      fc.property(power, time, fc.double({ min: 400, max: 1400, noNaN: true }), (watts, seconds, nm) => {
        const exposure = (exposureTime: number): Exposure => ({
          tissue: 'eye',
          wavelength: nm * 1e-9,
          exposureTime,
          sourceAngle: null,
        });
        const at = (exposureTime: number) => {
          const both = governingLimit(exposure(exposureTime));
          const longest = longestDistance(listed(both), (limit) => distanceFor({ power: watts, limit }));
          for (const limit of listed(both)) {
            expect(longest.distance).toBeGreaterThanOrEqual(distanceFor({ power: watts, limit }).distance);
          }
          return longest.distance;
        };
        // from 10 s on the tables have no steps for a point
        expect(at(Math.min(3e4, seconds * 3)) * (1 + 1e-9)).toBeGreaterThanOrEqual(at(seconds));
      }),
    );
  });

  test(`${name}: what is no power is refused`, () => {
    for (const watts of [-1e-3, Number.NaN, Infinity]) {
      expect(() => distanceFor({ power: watts, limit: statedLimit(10) })).toThrow(OutOfRange);
    }
    for (const level of [0, -10, Number.NaN]) {
      expect(() => distanceFor({ power: 1, limit: statedLimit(level) })).toThrow(OutOfRange);
    }
  });

  test(`${name}: the result carries set, time, wavelength and beam definition`, () => {
    const { limit, beamDefinition, basis } = distanceFor({ power: 1, limit: statedLimit(10) });
    expect(limit).toMatchObject({ set: 'icnirp2013', exposureTime: 10, wavelength: 532e-9 });
    expect(beamDefinition).toMatch(/^(1\/e²?|5 % of the peak)$/u);
    expect(basis.length).toBeGreaterThan(0);
  });
}

test('a limit relaxed for a large source is refused for a beam, and for a glass fibre’s end', () => {
  const relaxed = statedLimit(10, { sourceAngle: 10e-3 });
  for (const [name, distanceFor] of Object.entries(geometries)) {
    // a thick plastic core may be seen as large: 1 mm from 100 mm is 10 mrad
    if (name === 'multimode end')
      expect(distanceFor({ power: 1, limit: relaxed }).distance).toBeGreaterThan(0);
    else expect(() => distanceFor({ power: 1, limit: relaxed })).toThrow(/seen as a point/u);
  }
});

test('a wall ends a beam, and no distance is told beyond it', () => {
  const far = collimatedDistanceFrom1e({
    power: 1,
    limit: statedLimit(10),
    exitDiameter1e: 0,
    fullDivergence1e: 1e-3,
  });
  expect(reachIn(far, 6)).toEqual({ kind: 'reaches the wall', roomLength: 6 });
  expect(reachIn(far, 1000)).toEqual({ kind: 'ends in the room', distance: far.distance });
  expect(reachIn(far, null)).toEqual({ kind: 'room not known', distance: far.distance });
  expect(reachIn({ ...far, distance: 0 }, 6)).toEqual({ kind: 'under the limit everywhere' });
  expect(() => reachIn(far, 0)).toThrow(OutOfRange);
});

test('without a limit there is no longest distance', () => {
  expect(() =>
    longestDistance([], () =>
      collimatedDistanceFrom1e({ power: 1, limit: statedLimit(1), exitDiameter1e: 0, fullDivergence1e: 1 }),
    ),
  ).toThrow(OutOfRange);
});
