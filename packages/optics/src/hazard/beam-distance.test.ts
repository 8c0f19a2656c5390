import fc from 'fast-check';
import { expect, test } from 'vitest';
import { departures, hazardCase, judged, numberIn, statedLimit } from '../../reference/hazard-cases.ts';
import { OutOfRange } from '../out-of-range.ts';
import { averageIrradianceFrom1e, peakIrradianceFrom1e, width1eFromWidth1e2 } from './beam-definition.ts';
import {
  beyondFocusDistanceFrom1e,
  collimatedDistanceFrom1e,
  collimatedDistanceLinearFrom1e,
  ellipticDiodeDistanceFrom1e,
} from './beam-distance.ts';

for (const id of ['SAF-NOHD-1W-1MRAD', 'SAF-OSHA-YAG-DIRECT', 'SAF-OSHA-CO2-DIRECT', 'SAF-OSHA-AR-DIRECT']) {
  const one = hazardCase(id);
  test(one.title, () => {
    const { distance } = collimatedDistanceFrom1e({
      ...judged(one),
      exitDiameter1e: numberIn(one, 'aperture_diameter_m'),
      fullDivergence1e: numberIn(one, 'divergence_full_rad'),
    });
    expect(departures(one, { nohd_m: distance })).toEqual([]);
  });
}

const linear = hazardCase('SAF-NOHD-LINEAR-5MW');
test(linear.title, () => {
  const { distance } = collimatedDistanceLinearFrom1e({
    ...judged(linear),
    exitDiameter1e: numberIn(linear, 'diameter_1e_m'),
    fullDivergence1e: numberIn(linear, 'divergence_full_1e_rad'),
  });
  expect(departures(linear, { nohd_m: distance })).toEqual([]);
});

const argonLens = hazardCase('SAF-OSHA-AR-LENS');
test(argonLens.title, () => {
  const { distance } = beyondFocusDistanceFrom1e({
    ...judged(argonLens),
    focalLength: numberIn(argonLens, 'focal_length_m'),
    diameterOnLens1e: numberIn(argonLens, 'beam_at_lens_m'),
  });
  expect(departures(argonLens, { nhz_m: distance })).toEqual([]);
});

const focus = hazardCase('SAF-NOHD-LENS-FOCUS');
test(focus.title, () => {
  const result = beyondFocusDistanceFrom1e({
    ...judged(focus),
    focalLength: numberIn(focus, 'focal_length_m'),
    diameterOnLens1e: width1eFromWidth1e2(numberIn(focus, 'beam_1e2_diameter_m')),
  });
  expect(departures(focus, { nhz_m: result.distance })).toEqual([]);
  expect(result.from).toBe('the focus');
});

const class2 = hazardCase('SAF-NOHD-CLASS2-ZERO');
test(class2.title, () => {
  const beam = {
    ...judged(class2),
    exitDiameter1e: numberIn(class2, 'diameter_1e_m'),
    fullDivergence1e: numberIn(class2, 'divergence_full_1e_rad'),
  };
  // asked first, whatever the form: the peak form by itself would say metres
  for (const form of ['peak irradiance', 'averaged over the stop'] as const) {
    const result = collimatedDistanceFrom1e({ ...beam, form });
    expect(departures(class2, { nohd_m: result.distance })).toEqual([]);
    expect(result.form).toBe('under the limit everywhere');
  }
  // the note of the case: 6.6 m by the peak form, which just above the limit power indeed appears
  const above = collimatedDistanceFrom1e({ ...beam, power: 0.00098 });
  expect(above.distance).toBeGreaterThan(6);
});

const power = fc.double({ min: -7, max: 2, noNaN: true }).map((exponent) => 10 ** exponent);

const beamParts = fc.record({
  power,
  exitDiameter1e: fc.double({ min: 0, max: 0.02, noNaN: true }),
  fullDivergence1e: fc.double({ min: 1e-5, max: 0.1, noNaN: true }),
});

test('at its distance a beam has just the limit: on the axis, or averaged over the stop', () => {
  fc.assert(
    fc.property(beamParts, (beam) => {
      const limit = statedLimit(10);
      const widthAt = (r: number) => Math.hypot(beam.exitDiameter1e, beam.fullDivergence1e * r);
      const peak = collimatedDistanceFrom1e({ ...beam, limit });
      const averaged = collimatedDistanceFrom1e({ ...beam, limit, form: 'averaged over the stop' });
      if (peak.distance > 0) {
        expect(peakIrradianceFrom1e(beam.power, widthAt(peak.distance))).toBeCloseTo(10, 6);
      }
      if (averaged.distance > 0) {
        const irradiance = averageIrradianceFrom1e(beam.power, widthAt(averaged.distance), 7e-3);
        expect(irradiance / 10).toBeCloseTo(1, 6);
      }
    }),
  );
});

test('the form over 7 mm is never longer than the peak form, and joins it for a wide beam', () => {
  fc.assert(
    fc.property(beamParts, (beam) => {
      const limit = statedLimit(10);
      const peak = collimatedDistanceFrom1e({ ...beam, limit }).distance;
      const averaged = collimatedDistanceFrom1e({ ...beam, limit, form: 'averaged over the stop' }).distance;
      expect(averaged).toBeLessThanOrEqual(peak * (1 + 1e-12));
      // 1 W at 10 W/m² is 357 mm wide at the limit: 7 mm sees exp(−x), x < 4e-4 of flatness
      if (beam.power > 1 && peak > 0) expect(averaged / peak).toBeGreaterThan(0.999);
    }),
  );
});

test('the linear form is never longer than the quadratic one', () => {
  fc.assert(
    fc.property(beamParts, (beam) => {
      const limit = statedLimit(10);
      expect(collimatedDistanceLinearFrom1e({ ...beam, limit }).distance).toBeLessThanOrEqual(
        collimatedDistanceFrom1e({ ...beam, limit }).distance * (1 + 1e-12),
      );
    }),
  );
});

test('an exit of unknown diameter counts as nought, which reaches farthest', () => {
  fc.assert(
    fc.property(beamParts, (beam) => {
      const limit = statedLimit(10);
      const unknown = collimatedDistanceFrom1e({ ...beam, exitDiameter1e: null, limit });
      expect(unknown.distance).toBeGreaterThanOrEqual(collimatedDistanceFrom1e({ ...beam, limit }).distance);
    }),
  );
});

test('a round diode is a collimated beam without a width', () => {
  const one = { power: 0.1, limit: statedLimit(10) };
  expect(
    ellipticDiodeDistanceFrom1e({ ...one, fullDivergenceX1e: 0.2, fullDivergenceY1e: 0.2 }).distance,
  ).toBe(collimatedDistanceFrom1e({ ...one, exitDiameter1e: 0, fullDivergence1e: 0.2 }).distance);
});

test('a beam that is wider than the hazard from the start has no distance, and none is negative', () => {
  const beam = { power: 0.01, limit: statedLimit(10), exitDiameter1e: 0.1, fullDivergence1e: 1e-3 };
  for (const form of ['peak irradiance', 'averaged over the stop'] as const) {
    expect(collimatedDistanceFrom1e({ ...beam, form }).distance).toBe(0);
    expect(collimatedDistanceLinearFrom1e({ ...beam, form }).distance).toBe(0);
  }
});

for (const bad of [0, -1e-3, Number.NaN]) {
  test(`a divergence, focal length or width of ${bad} is refused`, () => {
    const one = { power: 0.1, limit: statedLimit(10) };
    expect(() => collimatedDistanceFrom1e({ ...one, exitDiameter1e: 0, fullDivergence1e: bad })).toThrow(
      OutOfRange,
    );
    expect(() => beyondFocusDistanceFrom1e({ ...one, focalLength: bad, diameterOnLens1e: 1e-3 })).toThrow(
      OutOfRange,
    );
    expect(() => beyondFocusDistanceFrom1e({ ...one, focalLength: 1e-2, diameterOnLens1e: bad })).toThrow(
      OutOfRange,
    );
    expect(() =>
      ellipticDiodeDistanceFrom1e({ ...one, fullDivergenceX1e: bad, fullDivergenceY1e: 0.1 }),
    ).toThrow(OutOfRange);
  });
}
test('a negative exit diameter is refused', () => {
  const one = { power: 0.1, limit: statedLimit(10), fullDivergence1e: 1e-3 };
  expect(() => collimatedDistanceFrom1e({ ...one, exitDiameter1e: -1e-3 })).toThrow(OutOfRange);
  expect(() => collimatedDistanceFrom1e({ ...one, exitDiameter1e: Number.NaN })).toThrow(OutOfRange);
});
