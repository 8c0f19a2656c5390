import fc from 'fast-check';
import { expect, test } from 'vitest';
import { departures, hazardCase, numberIn } from '../../reference/hazard-cases.ts';
import { OutOfRange } from '../out-of-range.ts';
import { weakestEvidence } from './evidence.ts';
import type { PulseTrain } from './exposure.ts';
import { exposureLimit } from './exposure-limit.ts';
import { listed } from './governing-limit.ts';
import { type LimitSet, limitSets } from './limit-set.ts';
import { governingTrainLimit, trainLimit } from './pulse-train.ts';

for (const id of ['SAF-TRAIN-1064-20HZ-EU', 'SAF-TRAIN-532-AVERAGE', 'SAF-TRAIN-1064-20HZ-2013']) {
  const one = hazardCase(id);
  test(one.title, () => {
    const limit = trainLimit(one.inputs.limits as LimitSet, {
      tissue: 'eye',
      wavelength: numberIn(one, 'wavelength_m'),
      sourceAngle: null,
      pulseDuration: numberIn(one, 'pulse_s'),
      repetitionRate: numberIn(one, 'prf_Hz'),
      exposureTime: numberIn(one, 'time_s'),
    });
    expect(departures(one, { H_per_pulse_J_m2: limit.radiantExposurePerPulse })).toEqual([]);
    if (one.mark === 'M') expect(weakestEvidence(limit.basis)).toBe('from memory');
    else expect(weakestEvidence(limit.basis)).toBe('read');
  });
}

const train: PulseTrain = {
  tissue: 'eye',
  wavelength: 1064e-9,
  sourceAngle: null,
  pulseDuration: 10e-9,
  repetitionRate: 20,
  exposureTime: 10,
};

test('the older set is the stricter one for a train, although its single pulse is not', () => {
  const { governing, sets } = governingTrainLimit(train);
  expect(governing.set).toBe('eu2006');
  expect(governing.rule).toBe('cumulative');
  expect(sets.icnirp2013.rule).toBe('single pulse');
  expect(governing.pulses).toBe(200);
  expect(governing.irradiance).toBeCloseTo(20 * governing.radiantExposurePerPulse, 12);
  expect(governing.exposureTime).toBe(10);
});

test('the case’s note: rule 3 gives 6.4e-4, rule 2 gives 1.7e-3', () => {
  const fast = { ...train, wavelength: 532e-9, repetitionRate: 15e3, exposureTime: 0.25 };
  expect(trainLimit('eu2006', fast).rule).toBe('cumulative');
  // the average rule by hand: 18·0.25^0.75/3750
  expect(exposureLimit('eu2006', fast).radiantExposure / 3750).toBeCloseTo(1.697e-3, 6);
});

test('a fast train is ruled by its average', () => {
  // 80 MHz, 100 fs: 10 W/m² for 10 s shared by 8e8 pulses
  const limit = trainLimit('icnirp2013', {
    ...train,
    wavelength: 650e-9,
    pulseDuration: 100e-15,
    repetitionRate: 80e6,
  });
  expect(limit.rule).toBe('average');
  expect(limit.irradiance).toBeCloseTo(10, 9);
});

// C5 of icnirp2013, from memory; H of 5 µs to 10 s is 18 t^0.75, of nanoseconds 2e-3, so each value is worked by hand
const c5: readonly (readonly [string, Partial<PulseTrain>, number])[] = [
  ['1 for 600 pulses', { repetitionRate: 60 }, 2e-3],
  ['5·N^-0.25 beyond 600: for 800', { repetitionRate: 80 }, 2e-3 * 5 * 800 ** -0.25],
  ['5·N^-0.25 for 10 000', { repetitionRate: 1000 }, 2e-3 * 5 * 10_000 ** -0.25],
  ['0.4 at the least', { repetitionRate: 10_000 }, 2e-3 * 0.4],
  ['1 up to 0.25 s', { repetitionRate: 10_000, exposureTime: 0.25 }, 2e-3],
  ['1 for longer pulses of a point', { pulseDuration: 1e-4, repetitionRate: 1 }, 18 * 1e-4 ** 0.75],
];
for (const [what, changes, expected] of c5) {
  test(`C5 is ${what}`, () => {
    const limit = trainLimit('icnirp2013', { ...train, wavelength: 532e-9, ...changes });
    expect(limit.radiantExposurePerPulse / expected).toBeCloseTo(1, 9);
  });
}

// from memory: N^-0.25 down to 0.4 up to α_max, down to 0.2 above it, 1 beyond 100 mrad. Pulses of 10 ms: α_max is 20 mrad
for (const [milliradians, pulses, factor] of [
  [5, 30, 1],
  [10, 16, 0.5],
  [10, 100, 0.4],
  [50, 16, 0.5],
  [50, 100, 100 ** -0.25],
  [50, 2000, 0.2],
  [120, 2000, 1],
] as const) {
  test(`${pulses} pulses of 10 ms from ${milliradians} mrad are reduced by ${factor.toFixed(2)}`, () => {
    const changes = {
      wavelength: 650e-9,
      sourceAngle: milliradians * 1e-3,
      pulseDuration: 10e-3,
      repetitionRate: pulses / 1000,
      exposureTime: 1000,
    };
    const { radiantExposurePerPulse, rule } = trainLimit('icnirp2013', { ...train, ...changes });
    const single = exposureLimit('icnirp2013', { ...train, ...changes, exposureTime: 10e-3 }).radiantExposure;
    expect(radiantExposurePerPulse / single).toBeCloseTo(factor, 9);
    expect(rule).toBe(factor === 1 ? 'single pulse' : 'cumulative');
  });
}

test('pulses within T_min or T_i count as one: their sum is held to the limit', () => {
  // 1 MHz for 5 µs: 5 pulses within T_i share 2e-3; within 18 µs of the older set 18 share 5e-3 and are 1/18 µs groups
  const burst = { ...train, wavelength: 532e-9, repetitionRate: 1e6, exposureTime: 5e-6 };
  expect(trainLimit('icnirp2013', burst).radiantExposurePerPulse).toBeLessThanOrEqual(2e-3 / 5);
  const older = { ...burst, exposureTime: 18e-6 };
  // on the boundary at 18 µs the stricter row, 18 t^0.75, rules
  expect(trainLimit('eu2006', older).radiantExposurePerPulse).toBeCloseTo((18 * 18e-6 ** 0.75) / 18, 9);
});

test('two pulses 17 µs apart are one for the older set, and each is allowed half of it', () => {
  // two fall into T_min of 18 µs: half of 18·(18 µs)^0.75, reduced for 10 s/17 µs/2 groups, by hand
  const pairs = { ...train, wavelength: 532e-9, repetitionRate: 1 / 17e-6 };
  const { radiantExposurePerPulse, rule } = trainLimit('eu2006', pairs);
  const groups = 10 / 17e-6 / 2;
  expect(radiantExposurePerPulse / (((18 * 18e-6 ** 0.75) / 2) * groups ** -0.25)).toBeCloseTo(1, 9);
  expect(rule).toBe('cumulative');
});

test('the cumulative rule is not applied to cornea and skin', () => {
  for (const set of limitSets) {
    for (const [tissue, wavelength] of [
      ['eye', 1550e-9],
      ['eye', 10.6e-6],
      ['eye', 375e-9],
      ['skin', 1064e-9],
    ] as const) {
      const limit = trainLimit(set, { ...train, tissue, wavelength });
      const single = exposureLimit(set, { ...train, tissue, wavelength, exposureTime: 10e-9 });
      expect(limit.rule).not.toBe('cumulative');
      const average = exposureLimit(set, { ...train, tissue, wavelength }).radiantExposure / 200;
      expect(limit.radiantExposurePerPulse).toBeCloseTo(Math.min(single.radiantExposure, average), 9);
    }
  }
});

test('rules with different stops share the smaller one', () => {
  // 1550 nm: 1 mm for the single pulse of 10 ns, 3.5 mm for the average over 10 s, which is what rules at 10 kHz
  const fast = { ...train, wavelength: 1550e-9, repetitionRate: 1e4 };
  expect(trainLimit('eu2006', fast)).toMatchObject({ rule: 'average', averagingDiameter: 1e-3 });
});

test('at 1050 nm the stricter of both confluence times is taken', () => {
  const at = (nm: number) => trainLimit('eu2006', { ...train, wavelength: nm * 1e-9, repetitionRate: 3e4 });
  // from memory and read: 18 µs below, 50 µs beyond; 30 kHz puts two pulses into 50 µs and none into 18 µs
  expect(at(1050).radiantExposurePerPulse).toBeLessThanOrEqual(
    Math.min(at(1049.9999).radiantExposurePerPulse, at(1050.0001).radiantExposurePerPulse) * (1 + 1e-6),
  );
});

const anyTrain: fc.Arbitrary<PulseTrain> = fc
  .record({
    tissue: fc.constantFrom('eye' as const, 'skin' as const),
    wavelength: fc.double({ min: 400, max: 1800, noNaN: true }).map((nm) => nm * 1e-9),
    sourceAngle: fc.option(fc.double({ min: 0, max: 0.15, noNaN: true })),
    pulseDuration: fc.double({ min: -9, max: -4, noNaN: true }).map((e) => 10 ** e),
    repetitionRate: fc.double({ min: -1, max: 7, noNaN: true }).map((e) => 10 ** e),
    exposureTime: fc.double({ min: -1, max: 4, noNaN: true }).map((e) => 10 ** e),
  })
  .filter(({ pulseDuration, repetitionRate }) => pulseDuration * repetitionRate <= 1);

test('a pulse in a train is never allowed more than alone, nor its train more than one long exposure', () => {
  fc.assert(
    fc.property(anyTrain, (one) => {
      for (const set of limitSets) {
        const limit = trainLimit(set, one);
        const single = exposureLimit(set, { ...one, exposureTime: one.pulseDuration });
        const whole = exposureLimit(set, one);
        expect(limit.radiantExposurePerPulse).toBeLessThanOrEqual(single.radiantExposure * (1 + 1e-12));
        expect(limit.radiantExposurePerPulse * limit.pulses).toBeLessThanOrEqual(
          whole.radiantExposure * (1 + 1e-12),
        );
        expect(limit.radiantExposurePerPulse).toBeGreaterThan(0);
      }
    }),
    { numRuns: 300 },
  );
});

test('the stricter set never loses for trains', () => {
  fc.assert(
    fc.property(anyTrain, (one) => {
      const both = governingTrainLimit(one);
      for (const limit of listed(both)) {
        expect(both.governing.radiantExposurePerPulse).toBeLessThanOrEqual(
          limit.radiantExposurePerPulse * (1 + 1e-11),
        );
      }
    }),
  );
});

test('a smaller source never raises the limit of the older set’s train, and an unknown one has the lowest', () => {
  const angle = fc.double({ min: 0, max: 0.15, noNaN: true });
  fc.assert(
    fc.property(anyTrain, angle, angle, (one, a, b) => {
      const at = (sourceAngle: number | null) =>
        trainLimit('eu2006', { ...one, sourceAngle }).radiantExposurePerPulse;
      expect(at(Math.min(a, b))).toBeLessThanOrEqual(at(Math.max(a, b)) * (1 + 1e-12));
      expect(at(null)).toBeLessThanOrEqual(at(a) * (1 + 1e-12));
    }),
  );
});

for (const [what, changes] of [
  ['pulses that overlap', { pulseDuration: 0.1, repetitionRate: 20 }],
  ['a train shorter than its pulse', { pulseDuration: 1e-3, exposureTime: 1e-4, repetitionRate: 1 }],
  ['no rate', { repetitionRate: 0 }],
  ['no duration', { pulseDuration: Number.NaN }],
] as const) {
  test(`${what} is refused`, () => {
    expect(() => trainLimit('eu2006', { ...train, ...changes })).toThrow(OutOfRange);
  });
}
