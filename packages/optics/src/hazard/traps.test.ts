/** What goes wrong in such computations, each held by a test. Sources: those of the formulas; numbers by hand. */
import { expect, test } from 'vitest';
import { departures, hazardCase, statedLimit } from '../../reference/hazard-cases.ts';
import { OutOfRange } from '../out-of-range.ts';
import { assumedTime, mustNotRelyOnReaction } from './assumed-time.ts';
import { stopArea } from './averaging-stop.ts';
import {
  averageIrradianceFrom1e,
  fullDivergence1eFromHalfAngle1e2,
  halfAngle1e2FromHalfAngle1Percent,
  peakIrradianceFrom1e,
  width1eFromWidth1e2,
} from './beam-definition.ts';
import { collimatedDistanceFrom1e } from './beam-distance.ts';
import { classEstimate, withLabel } from './class-estimate.ts';
import { class1Figure } from './class-figures.ts';
import { correctionA, correctionB } from './correction-factors.ts';
import type { Exposure } from './exposure.ts';
import { exposureLimit, limitsByHarm, powerAtLimit } from './exposure-limit.ts';
import { multimodeEndDistanceFrom5Percent, singleModeEndDistanceFrom1e2 } from './fibre-end-distance.ts';
import { governingLimit } from './governing-limit.ts';
import { powerToAssume } from './power-to-assume.ts';
import { trainLimit } from './pulse-train.ts';
import { reachIn } from './room-reach.ts';
import { combinedExposure } from './several-wavelengths.ts';

const eye = (nm: number, exposureTime: number): Exposure => ({
  tissue: 'eye',
  wavelength: nm * 1e-9,
  exposureTime,
  sourceAngle: null,
});

test('1a. J/m² are W/m² times the time', () => {
  const limit = exposureLimit('eu2006', eye(633, 0.25));
  expect(limit.radiantExposure).toBeCloseTo(6.364, 3);
  expect(limit.irradiance).toBeCloseTo(6.364 / 0.25, 2);
});

test('1b. J/cm² are 10⁴ J/m²: a list’s 6.36e-4 J/cm² is 6.36 J/m²', () => {
  const printed = hazardCase('SAF-EYE-651-ANSI');
  expect(departures(printed, { H_J_m2: 6.36e-4 * 1e4 })).toEqual([]);
  expect(departures(printed, { H_J_m2: 6.36e-4 * 1e2 })).toHaveLength(1);
  // 1 mW/cm² is 10 W/m²: the limit of 10 W/m² for 10 s
  expect(governingLimit(eye(633, 10)).governing.irradiance).toBe((1e-3 / 1e-4) * 1);
});

test('2. a beam of 1 mm and 1 mW is 26 W/m² over 7 mm, not its 1273 W/m²', () => {
  const even = 1e-3 / stopArea(1e-3);
  expect(even).toBeCloseTo(1273, 0);
  // all of it through the stop
  expect(averageIrradianceFrom1e(1e-3, 1e-3, 7e-3)).toBeCloseTo(25.98, 2);
});

test('3. a width at 1/e² taken for one at 1/e halves the irradiance; half angles and mrad are no full angles in rad', () => {
  const d86 = 2e-3;
  expect(peakIrradianceFrom1e(1, width1eFromWidth1e2(d86)) / peakIrradianceFrom1e(1, d86)).toBeCloseTo(2, 12);
  const distance = (fullDivergence1e: number) =>
    collimatedDistanceFrom1e({ power: 1, limit: statedLimit(10), exitDiameter1e: 0, fullDivergence1e })
      .distance;
  const half = 1e-3;
  expect(distance(half) / distance(fullDivergence1eFromHalfAngle1e2(half))).toBeCloseTo(Math.SQRT2, 12);
  expect(distance(1e-3) / distance(1)).toBeCloseTo(1000, 9);
});

test('4. the mode-field diameter is no waist radius, and a numerical aperture at 1 % is none at 5 % or 1/e²', () => {
  const one = { power: 0.05, limit: statedLimit(14.45) };
  const diameter = 5e-6;
  const right = singleModeEndDistanceFrom1e2({ ...one, wavelength: 780e-9, modeFieldDiameter1e2: diameter });
  const wrong = singleModeEndDistanceFrom1e2({
    ...one,
    wavelength: 780e-9,
    modeFieldDiameter1e2: diameter / 2,
  });
  expect(wrong.distance).toBeLessThan(right.distance / 1.9); // a radius would look half as far
  // a cone quoted at 1 % is 1.517 times its 1/e² angle, and √(ln 100/ln 20) = 1.24 times its 5 % angle
  expect(0.14 / halfAngle1e2FromHalfAngle1Percent(0.14)).toBeCloseTo(1.517, 3);
  const end = (aperture: number) =>
    multimodeEndDistanceFrom5Percent({
      ...one,
      fibreNumericalAperture5Percent: aperture,
      launchNumericalAperture5Percent: aperture,
    }).distance;
  expect(end(0.2 / Math.sqrt(Math.log(100) / Math.log(20)))).toBeCloseTo(end(0.2) * 1.24, 3);
});

test('5. sources round: 25.46 is printed as 25, 25.4 and 25.5, and 0.39 mW is not 10 W/m² over 7 mm', () => {
  const exact = governingLimit(eye(633, 0.25)).governing.irradiance;
  expect(exact).toBeCloseTo(25.456, 3);
  for (const printed of [25, 25.4, 25.5]) expect(Math.abs(exact / printed - 1)).toBeLessThan(0.02);
  expect(powerAtLimit(governingLimit(eye(633, 10)).governing) * 1e3).toBeCloseTo(0.385, 3);
  expect(class1Figure('eu2006', 633e-9).power / stopArea(7e-3)).toBeCloseTo(10.13, 2);
});

test('6. tables step at their own boundaries: 7 % at 1064 nm and 50 µs', () => {
  const dose = (time: number) => exposureLimit('eu2006', eye(1064, time)).radiantExposure;
  expect(dose(50.001e-6) / dose(49.999e-6)).toBeCloseTo(1.07, 2);
  expect(dose(50e-6)).toBe(0.05); // the stricter row
});

test('7. 0.25 s is refused for whatever is not seen, where times are chosen', () => {
  for (const nm of [399, 701, 785, 1550]) {
    expect(() => mustNotRelyOnReaction(0.25, nm * 1e-9)).toThrow(OutOfRange);
    expect(() => assumedTime('glance', nm * 1e-9)).toThrow(OutOfRange);
  }
  // the table itself answers: a pulse of 0.25 s may be 0.25 s long
  expect(exposureLimit('eu2006', eye(785, 0.25)).irradiance).toBeCloseTo(37.65, 2);
});

test('8. no distance is negative, none is told under the limit, and none beyond the room', () => {
  const limit = statedLimit(10);
  const beam = { limit, exitDiameter1e: 1e-3, fullDivergence1e: 1e-3 };
  expect(collimatedDistanceFrom1e({ ...beam, power: 0 }).distance).toBe(0);
  expect(collimatedDistanceFrom1e({ ...beam, power: powerAtLimit(limit) }).distance).toBe(0);
  expect(collimatedDistanceFrom1e({ ...beam, power: 1, exitDiameter1e: 10 }).distance).toBe(0);
  const far = collimatedDistanceFrom1e({ ...beam, power: 10 });
  expect(far.distance).toBeGreaterThan(1000);
  expect(reachIn(far, 8)).not.toHaveProperty('distance');
});

test('9. C_B serves photochemistry to 600 nm only, C_A begins beyond 700 nm, and 400 and 1400 nm are edges', () => {
  const harms = (nm: number) => limitsByHarm('eu2006', eye(nm, 100)).map(({ harm }) => harm);
  expect(harms(600)).toContain('photochemistry on the retina');
  expect(harms(600.001)).not.toContain('photochemistry on the retina');
  expect(correctionB(650e-9).value).toBeCloseTo(1e4, 6); // it exists there, and is not used
  expect(correctionA(700e-9).value).toBe(1);
  expect(correctionA(700.1e-9).value).toBeGreaterThan(1);
  expect(correctionA(650e-9).value).toBe(1);
  expect(harms(400)).toEqual(expect.arrayContaining(['heat on the retina', 'front of the eye, ultraviolet']));
  expect(harms(399.999)).toEqual(['front of the eye, ultraviolet']);
  expect(harms(1400)).toEqual(expect.arrayContaining(['heat on the retina', 'front of the eye, infrared']));
  expect(harms(1400.001)).toEqual(['front of the eye, infrared']);
});

test('10. lines add by tissue, and cornea and skin have no cumulative rule', () => {
  const lines = [
    { ...eye(633, 10), irradiance: 9 },
    { ...eye(1550, 10), irradiance: 900 },
  ];
  expect(combinedExposure('eu2006', lines).largest.timesLimit).toBeCloseTo(0.9, 9);
  const train = { pulseDuration: 1e-8, repetitionRate: 1000, exposureTime: 10 };
  expect(trainLimit('eu2006', { ...eye(1064, 10), ...train }).rule).toBe('cumulative');
  expect(trainLimit('eu2006', { ...eye(1550, 10), ...train }).rule).not.toBe('cumulative');
  expect(trainLimit('eu2006', { ...eye(1064, 10), ...train, tissue: 'skin' }).rule).not.toBe('cumulative');
});

test('11. a label or a low reading never lowers the result', () => {
  const estimate = classEstimate({ wavelength: 808e-9, power: 0.2 });
  expect(withLabel(estimate, '2').treatedLike).toBe(estimate.treatedLike);
  expect(powerToAssume({ highest: 0.2, rated: 5e-3, reading: 1e-3 }).power).toBe(0.2);
  expect(powerToAssume({ highest: null, rated: 5e-3, reading: 1e-3 }).power).toBe(10e-3);
});
