import fc from 'fast-check';
import { expect, test } from 'vitest';
import { departures, hazardCase, numberIn } from '../../reference/hazard-cases.ts';
import { OutOfRange } from '../out-of-range.ts';
import {
  averageIrradianceFrom1e,
  fivePercentTo1e,
  fractionThroughStop,
  fullDivergence1eFromHalfAngle1e2,
  fwhmPerRadius1e2,
  fwhmTo1e2,
  halfAngle1e2FromHalfAngle1Percent,
  hotSpotFactor,
  onePercentTo1e2,
  peakIrradianceFrom1e,
  printedFivePercentTo1e,
  width1e2FromFwhm,
  width1eFromFwhm,
  width1eFromWidth1e2,
} from './beam-definition.ts';

for (const [id, factor] of [
  ['SAF-K-5PCT-1E', fivePercentTo1e],
  ['SAF-K-FWHM-1E2', fwhmTo1e2],
  ['SAF-K-FWHM-W', fwhmPerRadius1e2],
  ['SAF-K-1PCT-1E2', onePercentTo1e2],
] as const) {
  const one = hazardCase(id);
  test(one.title, () => expect(departures(one, { factor })).toEqual([]));
}

for (const id of ['SAF-ETA-MM100-0.30', 'SAF-ETA-PCS200-0.35', 'SAF-ETA-POF1000-0.47', 'SAF-ETA-SM-1300']) {
  const one = hazardCase(id);
  test(one.title, () => {
    const fraction = fractionThroughStop(numberIn(one, 'd63_m'), numberIn(one, 'aperture_m'));
    const [name = ''] = Object.keys(one.expected);
    expect(departures(one, { [name]: fraction })).toEqual([]);
  });
}

/** Fraction of a Gaussian exp(−(2r/d)²) inside a radius, by the midpoint rule: no closed form is used. */
function integrated(diameter1e: number, radius: number): number {
  const ringSum = (to: number) => {
    const steps = 20_000;
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const r = ((i + 0.5) * to) / steps;
      sum += Math.exp(-(((2 * r) / diameter1e) ** 2)) * r * (to / steps);
    }
    return sum;
  };
  return ringSum(radius) / ringSum(5 * diameter1e);
}

test('the share of a Gaussian in a stop is its integral', () => {
  for (const [d, stop] of [
    [1e-3, 7e-3],
    [7e-3, 7e-3],
    [20e-3, 7e-3],
  ] as const) {
    // the midpoint rule with 20 000 rings errs by about 1e-8
    expect(fractionThroughStop(d, stop)).toBeCloseTo(integrated(d, stop / 2), 6);
  }
  expect(fractionThroughStop(7e-3, 7e-3)).toBeCloseTo(1 - Math.exp(-1), 12); // 63 %
});

test('the widths of one Gaussian fall on its profile where their names say', () => {
  const fwhm = 1e-3;
  const profile = (width1e: number, at: number) => Math.exp(-(((2 * at) / width1e) ** 2));
  const width1e = width1eFromFwhm(fwhm);
  expect(profile(width1e, fwhm / 2)).toBeCloseTo(0.5, 12);
  expect(profile(width1e, width1e / 2)).toBeCloseTo(Math.exp(-1), 12);
  expect(profile(width1e, width1e2FromFwhm(fwhm) / 2)).toBeCloseTo(Math.exp(-2), 12);
  expect(width1eFromWidth1e2(width1e2FromFwhm(fwhm))).toBeCloseTo(width1e, 15);
  // × 1.2011 and × 1.6986: from the definitions, printed to five digits
  expect(width1e / fwhm).toBeCloseTo(1.2011, 4);
  expect(width1e2FromFwhm(fwhm) / fwhm).toBeCloseTo(1.6986, 4);
});

test('a half angle at 1/e² becomes a full angle at 1/e by √2, not by 2', () => {
  expect(fullDivergence1eFromHalfAngle1e2(1e-3)).toBeCloseTo(1.41421356e-3, 10);
  expect(halfAngle1e2FromHalfAngle1Percent(onePercentTo1e2 * 0.1)).toBeCloseTo(0.1, 12);
});

test('the 1.7 of the standards is √(ln 20) rounded, and not the 1.699 of a FWHM', () => {
  expect(printedFivePercentTo1e).toBeLessThan(fivePercentTo1e);
  expect(fivePercentTo1e / printedFivePercentTo1e).toBeCloseTo(1.018, 3);
  expect(fwhmTo1e2).not.toBe(fivePercentTo1e);
});

test('peak irradiance is 4P/(π d63²) and 8P/(π d86²)', () => {
  const d86 = 2e-3;
  expect(peakIrradianceFrom1e(1, width1eFromWidth1e2(d86))).toBeCloseTo(8 / (Math.PI * d86 ** 2), 4);
});

test('an average over a stop never exceeds the peak, and meets it far away', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-5, max: 1, noNaN: true }), (d) => {
      const peak = peakIrradianceFrom1e(1, d);
      expect(averageIrradianceFrom1e(1, d, 7e-3)).toBeLessThanOrEqual(peak * (1 + 1e-12));
    }),
  );
  // at 1 m width the stop sees exp(−(0.007)²) of the peak at its rim
  expect(averageIrradianceFrom1e(1, 1, 7e-3) / peakIrradianceFrom1e(1, 1)).toBeCloseTo(1, 4);
});

test('hot spots are a proposal, and no power is negative', () => {
  expect(hotSpotFactor.value).toBe(2);
  expect(hotSpotFactor.basis.evidence).toBe('proposal');
  for (const power of [-1e-9, Number.NaN, Infinity]) {
    expect(() => peakIrradianceFrom1e(power, 1e-3)).toThrow(OutOfRange);
    expect(() => averageIrradianceFrom1e(power, 1e-3, 7e-3)).toThrow(OutOfRange);
  }
  expect(() => peakIrradianceFrom1e(1, 0)).toThrow(OutOfRange);
});
