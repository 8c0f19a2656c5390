import { expect, test } from 'vitest';
import { departures, hazardCase, judged, numberIn, statedLimit } from '../../reference/hazard-cases.ts';
import { normalReflectance } from '../loss/fresnel.ts';
import { OutOfRange } from '../out-of-range.ts';
import { fractionThroughStop } from './beam-definition.ts';
import {
  collimatedMultimodeDistanceFrom5Percent,
  collimatedSingleModeDistanceFrom1e2,
} from './collimated-output-distance.ts';
import {
  fewModeEndDistance,
  magnifierLine,
  modeDiameter1eAt,
  multimodeDiameter1eFrom5Percent,
  multimodeEndDistanceFrom5Percent,
  singleModeEndDistanceFrom1e2,
  wideConeEndDistanceFrom5Percent,
} from './fibre-end-distance.ts';

for (const id of ['SAF-D63-MM50-0.20', 'SAF-D63-MM62-0.28', 'SAF-D63-MM100-0.30']) {
  const one = hazardCase(id);
  test(one.title, () => {
    const d63 = multimodeDiameter1eFrom5Percent(numberIn(one, 'na_5pct'), numberIn(one, 'distance_m'));
    expect(departures(one, { d63_m: d63 })).toEqual([]);
  });
}

const singleModeSpot = hazardCase('SAF-D63-SM-1300');
test(singleModeSpot.title, () => {
  const d63 = modeDiameter1eAt(
    numberIn(singleModeSpot, 'wavelength_m'),
    numberIn(singleModeSpot, 'mfd_1e2_m'),
    numberIn(singleModeSpot, 'distance_m'),
  );
  expect(departures(singleModeSpot, { d63_m: d63 })).toEqual([]);
});

const reflection = hazardCase('SAF-FRESNEL-BACK');
test(reflection.title, () => {
  expect(
    departures(reflection, { reflectance: normalReflectance(1, numberIn(reflection, 'index')) }),
  ).toEqual([]);
});

const hazardLevel1M = hazardCase('SAF-1M-1550-136MW');
test(hazardLevel1M.title, () => {
  const one = hazardLevel1M;
  const d63 = modeDiameter1eAt(
    numberIn(one, 'wavelength_m'),
    numberIn(one, 'mfd_1e2_m'),
    numberIn(one, 'distance_m'),
  );
  const total = numberIn(one, 'ael_W') / fractionThroughStop(d63, numberIn(one, 'aperture_m'));
  expect(departures(one, { total_power_W: total })).toEqual([]);
});

for (const id of ['SAF-SM-780', 'SAF-SM-633-7MM']) {
  const one = hazardCase(id);
  test(one.title, () => {
    const { distance, beamDefinition } = singleModeEndDistanceFrom1e2({
      ...judged(one),
      wavelength: numberIn(one, 'wavelength_m'),
      modeFieldDiameter1e2: numberIn(one, 'mfd_1e2_m'),
      form: 'form' in one.inputs ? 'averaged over the stop' : 'peak irradiance',
    });
    expect(departures(one, { nohd_m: distance })).toEqual([]);
    expect(beamDefinition).toBe('1/e²');
  });
}

for (const [id, fibre, launch] of [
  ['SAF-MM-532-NA0.22', 'na_5pct', 'na_5pct'],
  ['SAF-MM-UNDERFILLED', 'fibre_na_5pct', 'launch_na_5pct'],
] as const) {
  const one = hazardCase(id);
  test(one.title, () => {
    const { distance, beamDefinition } = multimodeEndDistanceFrom5Percent({
      ...judged(one),
      fibreNumericalAperture5Percent: numberIn(one, fibre),
      launchNumericalAperture5Percent: numberIn(one, launch),
    });
    expect(departures(one, { nohd_m: distance })).toEqual([]);
    expect(beamDefinition).toBe('5 % of the peak');
  });
}

const collimated = hazardCase('SAF-COLLIM-FIBRE');
test(collimated.title, () => {
  const { distance, from } = collimatedSingleModeDistanceFrom1e2({
    ...judged(collimated),
    wavelength: numberIn(collimated, 'wavelength_m'),
    modeFieldDiameter1e2: numberIn(collimated, 'mfd_1e2_m'),
    focalLength: numberIn(collimated, 'focal_length_m'),
  });
  expect(departures(collimated, { nohd_m: distance })).toEqual([]);
  expect(from).toBe('the lens');
});

const one = { power: 0.1, limit: statedLimit(10) };

test('a launch that does not fill the fibre reaches farther, in proportion', () => {
  const at = (launch: number) =>
    multimodeEndDistanceFrom5Percent({
      ...one,
      fibreNumericalAperture5Percent: 0.22,
      launchNumericalAperture5Percent: launch,
    }).distance;
  expect(at(0.05) / at(0.1)).toBeCloseTo(2, 12);
  expect(at(0.5)).toBe(at(0.22)); // more than the fibre takes does not come out
});

test('a launch nobody measured is refused: any narrow cone is possible', () => {
  const end = { ...one, fibreNumericalAperture5Percent: 0.22, launchNumericalAperture5Percent: null };
  expect(() => multimodeEndDistanceFrom5Percent(end)).toThrow(/not known/u);
  expect(() => wideConeEndDistanceFrom5Percent(end)).toThrow(OutOfRange);
});

test('with tan(asin NA) the distance is shorter by 2.5 % at 0.22 and by 12 % at 0.47', () => {
  // cos(asin NA) by hand: √(1 − NA²)
  for (const [aperture, ratio] of [
    [0.22, 0.9755],
    [0.47, 0.8827],
  ] as const) {
    const end = {
      ...one,
      fibreNumericalAperture5Percent: aperture,
      launchNumericalAperture5Percent: aperture,
    };
    const plain = multimodeEndDistanceFrom5Percent(end).distance;
    expect(wideConeEndDistanceFrom5Percent(end).distance / plain).toBeCloseTo(ratio, 4);
  }
});

test('at its distance the cone is as wide as the guide’s table says, with the limit on its axis', () => {
  const end = { ...one, fibreNumericalAperture5Percent: 0.3, launchNumericalAperture5Percent: 0.3 };
  const { distance } = wideConeEndDistanceFrom5Percent(end);
  const d63 = multimodeDiameter1eFrom5Percent(0.3, distance);
  expect((4 * 0.1) / (Math.PI * d63 ** 2)).toBeCloseTo(10, 9);
});

test('below its cut-off a fibre is judged by the narrower cone', () => {
  const end = {
    ...one,
    wavelength: 633e-9,
    modeFieldDiameter1e2: 4.3e-6,
    fibreNumericalAperture5Percent: 0.13,
    launchNumericalAperture5Percent: 0.13,
  };
  const longest = Math.max(
    singleModeEndDistanceFrom1e2(end).distance,
    multimodeEndDistanceFrom5Percent(end).distance,
  );
  expect(fewModeEndDistance(end).distance).toBe(longest);
  const narrow = { ...end, launchNumericalAperture5Percent: 0.01 };
  expect(fewModeEndDistance(narrow).beamDefinition).toBe('5 % of the peak');
  const wide = { ...end, modeFieldDiameter1e2: 20e-6 };
  expect(fewModeEndDistance(wide).beamDefinition).toBe('1/e²');
});

test('the diameter of a mode is not its radius: half of it would halve the distance', () => {
  const at = (modeFieldDiameter1e2: number) =>
    singleModeEndDistanceFrom1e2({ ...one, wavelength: 780e-9, modeFieldDiameter1e2 }).distance;
  expect(at(5e-6) / at(2.5e-6)).toBeCloseTo(2, 12);
});

test('a collimated multimode output spreads as the picture of its core', () => {
  // a = 2·8 mm·tan(asin 0.2)/1.7 and φ = 50 µm/8 mm, by hand; then √(4P/(πE) − a²)/φ with 0.1 W and 10 W/m²
  const { distance } = collimatedMultimodeDistanceFrom5Percent({
    ...one,
    coreDiameter: 50e-6,
    numericalAperture5Percent: 0.2,
    focalLength: 8e-3,
  });
  const exit = (16e-3 * 0.204124145) / 1.7;
  expect(distance).toBeCloseTo(Math.sqrt(0.4 / (Math.PI * 10) - exit ** 2) / 6.25e-3, 5);
});

test('a magnifier brings all of it: distance plays no part', () => {
  // 10 W/m² over 7 mm: 0.385 mW
  const line = magnifierLine({ power: 1e-3, limit: statedLimit(10) });
  expect(line.timesLimit).toBeCloseTo(1e-3 / 3.848451e-4, 6);
  expect(line.isAboveLimit).toBe(true);
  expect(magnifierLine({ power: 3.8e-4, limit: statedLimit(10) }).isAboveLimit).toBe(false);
});

for (const aperture of [0, 1, -0.1, Number.NaN]) {
  test(`${aperture} is refused as a numerical aperture`, () => {
    const end = { ...one, fibreNumericalAperture5Percent: aperture, launchNumericalAperture5Percent: 0.1 };
    expect(() => multimodeEndDistanceFrom5Percent(end)).toThrow(OutOfRange);
    expect(() => multimodeDiameter1eFrom5Percent(aperture, 0.1)).toThrow(OutOfRange);
  });
}
