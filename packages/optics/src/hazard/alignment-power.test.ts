import fc from 'fast-check';
import { expect, test } from 'vitest';
import { departures, hazardCase, numberIn } from '../../reference/hazard-cases.ts';
import { OutOfRange } from '../out-of-range.ts';
import { alignmentPower, attenuationNeeded } from './alignment-power.ts';
import { assumedTime } from './assumed-time.ts';
import { class1Figure } from './class-figures.ts';
import { powerAtLimit } from './exposure-limit.ts';
import { governingLimit } from './governing-limit.ts';
import { hiddenInfrared, powerToAssume } from './power-to-assume.ts';

for (const id of ['SAF-AL-VIS-1MW', 'SAF-AL-785']) {
  const one = hazardCase(id);
  test(one.title, () => {
    const { power } = alignmentPower(numberIn(one, 'wavelength_m'));
    expect(departures(one, { suggested_power_W: power })).toEqual([]);
  });
}

const reaction = hazardCase('SAF-AL-VIS-2S');
test(reaction.title, () => {
  const wavelength = numberIn(reaction, 'wavelength_m');
  const { exposureTime } = assumedTime('deliberate reaction', wavelength);
  expect(exposureTime).toBe(numberIn(reaction, 'reaction_s'));
  const { governing } = governingLimit({ tissue: 'eye', wavelength, exposureTime, sourceAngle: null });
  expect(departures(reaction, { power_into_7mm_W: powerAtLimit(governing) })).toEqual([]);
  expect(departures(reaction, { power_into_7mm_W: alignmentPower(wavelength).better })).toEqual([]);
});

const attenuation = hazardCase('SAF-AL-ATTEN-532');
test(attenuation.title, () => {
  const density = attenuationNeeded(numberIn(attenuation, 'power_W'), numberIn(attenuation, 'target_W'));
  expect(departures(attenuation, { attenuation_od: density })).toEqual([]);
});

const hidden = hazardCase('SAF-HIDDEN-IR-808');
test(hidden.title, () => {
  const green = numberIn(hidden, 'green_rated_W');
  const wavelength = numberIn(hidden, 'ir_wavelength_m');
  const measured = hiddenInfrared(green, wavelength, { kind: 'measured', power: numberIn(hidden, 'ir_W') });
  expect(departures(hidden, { ir_over_class1: measured.timesClass1 })).toEqual([]);
  // not known: twice the green rating, which is what was found in that pointer
  expect(hiddenInfrared(green, wavelength, { kind: 'not known' }).power).toBe(numberIn(hidden, 'ir_W'));
  expect(hiddenInfrared(green, wavelength, { kind: 'blocked by a filter' }).power).toBe(0);
  expect(() => hiddenInfrared(green, wavelength, { kind: 'measured', power: -1 })).toThrow(OutOfRange);
});

// our proposal from class 1, by hand: 0.039 mW; 0.39 mW·C_A·C_C with C_C at most 8; 10 mW
for (const [nm, milliwatts, viewing] of [
  [405, 0.039, 'diffuse spots'],
  [450, 0.039, 'diffuse spots'], // shared boundary: the lower
  [451, 1, 'diffuse spots'],
  [699, 1, 'diffuse spots'],
  [700, 0.39, 'card, camera or detector only'],
  [1064, 1.95, 'card, camera or detector only'],
  [1310, 15.6, 'card, camera or detector only'],
  [1550, 10, 'detector only'],
] as const) {
  test(`${nm} nm is aligned with at most ${milliwatts} mW, by ${viewing}`, () => {
    const suggestion = alignmentPower(nm * 1e-9);
    expect(suggestion.power * 1e3).toBeCloseTo(milliwatts, 9);
    expect(suggestion.viewing).toBe(viewing);
    expect(suggestion.better).toBeLessThanOrEqual(suggestion.power);
    expect(suggestion.basis.some(({ evidence }) => evidence === 'proposal')).toBe(nm <= 450 || nm >= 700);
  });
}

test('outside 400 to 4000 nm no power to align with is known', () => {
  for (const nm of [399, 4001, Number.NaN]) expect(() => alignmentPower(nm * 1e-9)).toThrow(OutOfRange);
});

test('no attenuation is asked of a beam that is weak enough', () => {
  expect(attenuationNeeded(0.5e-3, 1e-3)).toBe(0);
  expect(attenuationNeeded(0, 1e-3)).toBe(0);
  expect(() => attenuationNeeded(-1, 1e-3)).toThrow(OutOfRange);
  expect(() => attenuationNeeded(1, 0)).toThrow(OutOfRange);
});

test('outside the reach of colour vision the class 1 figure is not exceeded', () => {
  for (const nm of [405, 445, 785, 980, 1310, 1550]) {
    expect(alignmentPower(nm * 1e-9).power).toBe(class1Figure('eu2006', nm * 1e-9).power);
  }
});

test('a power nobody knows is twice the rating, and nothing that is read lowers it', () => {
  const power = fc.double({ min: 0, max: 10, noNaN: true });
  fc.assert(
    fc.property(power, power, fc.option(power), (highest, rated, reading) => {
      const both = powerToAssume({ highest, rated, reading });
      expect(both.power).toBeGreaterThanOrEqual(Math.max(highest, rated, reading ?? 0));
      expect(powerToAssume({ highest: null, rated, reading }).power).toBeGreaterThanOrEqual(2 * rated);
    }),
  );
  expect(powerToAssume({ highest: null, rated: 5e-3, reading: 1e-3 })).toMatchObject({ power: 10e-3 });
  expect(powerToAssume({ highest: null, rated: 5e-3 }).assumed).toContain('may be too mild');
  expect(powerToAssume({ highest: 5e-3, rated: 20e-3 }).assumed).toContain('more was rated');
  expect(() => powerToAssume({ highest: null, rated: null })).toThrow(/neither/u);
  expect(() => powerToAssume({ highest: -1, rated: null })).toThrow(OutOfRange);
});
