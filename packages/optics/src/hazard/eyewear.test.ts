import fc from 'fast-check';
import { expect, test } from 'vitest';
import { departures, hazardCase, numberIn, statedLimit } from '../../reference/hazard-cases.ts';
import { OutOfRange } from '../out-of-range.ts';
import { type ExposureLimit, exposureLimit } from './exposure-limit.ts';
import {
  alignmentEyewear,
  eyewearModes,
  largestDensity,
  largestScaleNumber,
  opticalDensityForPower,
  opticalDensityForPulse,
} from './eyewear.ts';
import { governingLimit } from './governing-limit.ts';
import { trainLimit } from './pulse-train.ts';

for (const id of ['SAF-OD-1064-1NS', 'SAF-OD-1064-1NS-2013']) {
  const one = hazardCase(id);
  test(one.title, () => {
    const limit: ExposureLimit = { ...statedLimit(1), radiantExposure: numberIn(one, 'mpe_J_m2') };
    const { opticalDensity } = opticalDensityForPulse(numberIn(one, 'exposure_J_m2'), limit);
    expect(departures(one, { od: opticalDensity })).toEqual([]);
  });
}

for (const id of ['SAF-OD-OSHA-AR-025', 'SAF-OD-OSHA-HENE-025', 'SAF-OD-532-200MW-10S']) {
  const one = hazardCase(id);
  test(one.title, () => {
    const { governing } = governingLimit({
      tissue: 'eye',
      wavelength: numberIn(one, 'wavelength_m'),
      exposureTime: numberIn(one, 'time_s'),
      sourceAngle: null,
    });
    expect(governing.averagingDiameter).toBe(numberIn(one, 'aperture_m'));
    const { opticalDensity, limit } = opticalDensityForPower(numberIn(one, 'power_W'), governing);
    expect(departures(one, { od: opticalDensity })).toEqual([]);
    expect(limit).toBe(governing);
  });
}

const scale = hazardCase('SAF-OD-EN207-N');
test(scale.title, () => {
  const number = largestScaleNumber(numberIn(scale, 'transmittance'));
  expect(departures(scale, { scale_number_max: number })).toEqual([]);
});

test('a transmission of exactly a power of ten keeps its whole scale number', () => {
  expect([1, 0.1, 1e-2, 1e-3, 1e-4, 1e-7].map(largestScaleNumber)).toEqual([0, 1, 2, 3, 4, 7]);
  for (const bad of [0, -1, 1.1, Number.NaN]) expect(() => largestScaleNumber(bad)).toThrow(OutOfRange);
});

test('a density is rounded up, but a whole one stays', () => {
  const limit = statedLimit(10);
  const power = (timesLimit: number) => (timesLimit * 10 * Math.PI * 7e-3 ** 2) / 4;
  expect(opticalDensityForPower(power(100), limit).atLeast).toBe(2);
  expect(opticalDensityForPower(power(101), limit).atLeast).toBe(3);
  // a hundred that came out of a division
  expect(opticalDensityForPower(power(100 * (1 + 1e-12)), limit).atLeast).toBe(2);
  expect(opticalDensityForPower(power(0.5), limit)).toMatchObject({ opticalDensity: 0, atLeast: 0 });
  expect(opticalDensityForPower(0, limit).opticalDensity).toBe(0);
});

test('more power and a lower limit never need a lower density; the largest one counts', () => {
  const positive = fc.double({ min: 1e-6, max: 1e3, noNaN: true });
  fc.assert(
    fc.property(positive, positive, positive, (power, a, b) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)].map((level) => statedLimit(level));
      const strict = opticalDensityForPower(power, low!);
      const mild = opticalDensityForPower(power, high!);
      expect(strict.opticalDensity).toBeGreaterThanOrEqual(mild.opticalDensity);
      expect(opticalDensityForPower(2 * power, low!).opticalDensity).toBeGreaterThanOrEqual(
        strict.opticalDensity,
      );
      expect(largestDensity(mild, strict).opticalDensity).toBe(strict.opticalDensity);
    }),
  );
});

test('a pulse in a train is held to the limit of each pulse', () => {
  const train = {
    tissue: 'eye',
    wavelength: 1064e-9,
    sourceAngle: null,
    pulseDuration: 10e-9,
    repetitionRate: 20,
    exposureTime: 10,
  } as const;
  const limit = trainLimit('eu2006', train);
  const single = exposureLimit('eu2006', { ...train, exposureTime: 10e-9 });
  expect(opticalDensityForPulse(1, limit).opticalDensity).toBeCloseTo(
    Math.log10(1 / limit.radiantExposurePerPulse),
    12,
  );
  expect(opticalDensityForPulse(1, limit).opticalDensity).toBeGreaterThan(
    opticalDensityForPulse(1, single).opticalDensity,
  );
  expect(() => opticalDensityForPulse(-1, single)).toThrow(/1 J\/cm² is 10 000 J\/m²/u);
});

test('the modes of eyewear go by the length of the pulse, two on a shared boundary', () => {
  // DGUV Information 203-042: read
  expect([10, 0.25, 1e-3, 1e-6, 1e-7, 1e-9, 1e-10].map(eyewearModes)).toEqual([
    ['D'],
    ['I'],
    ['I'],
    ['I', 'R'],
    ['R'],
    ['R'],
    ['M'],
  ]);
});

test('alignment eyewear exists for visible light only', () => {
  // DGUV Information 203-042, 2.2 and 6.1: read
  expect(alignmentEyewear(532e-9).map(({ passes, exposureTime }) => [passes, exposureTime])).toEqual([
    [0.6e-3, 2],
    [1e-3, 0.25],
  ]);
  expect(() => alignmentEyewear(785e-9)).toThrow(OutOfRange);
  expect(() => alignmentEyewear(399e-9)).toThrow(OutOfRange);
});
