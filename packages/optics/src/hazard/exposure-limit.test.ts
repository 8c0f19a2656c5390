import { expect, test } from 'vitest';
import { departures, type HazardCase, hazardCases, numberIn } from '../../reference/hazard-cases.ts';
import { OutOfRange } from '../out-of-range.ts';
import { evidenceMarks, weakestEvidence } from './evidence.ts';
import type { Exposure } from './exposure.ts';
import { type ExposureLimit, exposureLimit, limitsByHarm, powerAtLimit } from './exposure-limit.ts';
import { type LimitSet, limitSets } from './limit-set.ts';
import { simplifiedEyeLimit } from './simplified-limit.ts';

function answer(one: HazardCase, limit: { radiantExposure: number; irradiance: number }) {
  return 'H_J_m2' in one.expected ? { H_J_m2: limit.radiantExposure } : { E_W_m2: limit.irradiance };
}

function exposureOf(one: HazardCase): Exposure {
  return {
    tissue: one.topic === 'mpe-skin' ? 'skin' : 'eye',
    wavelength: numberIn(one, 'wavelength_m'),
    exposureTime: numberIn(one, 'time_s'),
    sourceAngle: null,
  };
}

for (const one of hazardCases.filter(({ topic }) => topic === 'mpe-eye' || topic === 'mpe-skin')) {
  test(one.title, () => {
    if ('method' in one.inputs) {
      const { wavelength, exposureTime } = exposureOf(one);
      expect(departures(one, answer(one, simplifiedEyeLimit(wavelength, exposureTime)))).toEqual([]);
      return;
    }
    // the skin has one table, which both sets share
    const sets = one.inputs.limits === undefined ? limitSets : [one.inputs.limits as LimitSet];
    for (const set of sets) {
      const limit = exposureLimit(set, exposureOf(one));
      expect(departures(one, answer(one, limit))).toEqual([]);
      // what the case remembers, the result must not claim to have read
      if (one.mark === 'M') expect(evidenceMarks[weakestEvidence(limit.basis)]).toBe('M');
    }
    if (one.mark === 'R' && !one.id.endsWith('-ANSI')) {
      expect(evidenceMarks[weakestEvidence(exposureLimit('eu2006', exposureOf(one)).basis)]).toBe('R');
    }
  });
}

const eye = (wavelength: number, exposureTime: number, sourceAngle: number | null = null): Exposure => ({
  tissue: 'eye',
  wavelength,
  exposureTime,
  sourceAngle,
});

// What the tables print for bands and times that no stored case asks for. Directive 2006/25/EC, tables 2.2 and 2.4: read
// (marked R); ICNIRP 2013 and everything for the eye from 10 s on: from memory (M). [mark, set, nm, s, J/m²]
const printed: readonly (readonly ['R' | 'M', LimitSet, number, number, number])[] = [
  ['R', 'eu2006', 532, 1e-12, 1.5e-4],
  ['R', 'eu2006', 532, 1e-10, 2.7e4 * 1e-10 ** 0.75],
  ['R', 'eu2006', 850, 1e-12, 1.5e-4 * 10 ** 0.3],
  ['R', 'eu2006', 1064, 1e-12, 1.5e-3],
  ['R', 'eu2006', 1064, 1e-10, 2.7e5 * 1e-10 ** 0.75],
  ['R', 'eu2006', 1300, 1e-8, 5e-2 * 8],
  ['M', 'icnirp2013', 532, 1e-12, 1e-3],
  ['M', 'icnirp2013', 532, 1e-10, 2e-3],
  ['M', 'icnirp2013', 850, 1e-12, 1e-3 * 10 ** 0.3],
  ['M', 'icnirp2013', 1064, 1e-12, 1e-2],
  ['M', 'icnirp2013', 1064, 1, 90],
  ['R', 'eu2006', 350, 1e-6, 5600 * 1e-6 ** 0.25],
  ['M', 'eu2006', 350, 2e4, 1e4],
  ['R', 'eu2006', 1450, 1, 5600],
  ['R', 'eu2006', 1450, 1e-10, 1e12 * 1e-10],
  ['R', 'eu2006', 1550, 1e-10, 1e13 * 1e-10],
  ['R', 'eu2006', 2000, 1e-10, 1e12 * 1e-10],
  ['R', 'eu2006', 2000, 1e-6, 1e3],
  ['R', 'eu2006', 10600, 1e-8, 100],
  ['R', 'eu2006', 10600, 1e-3, 5600 * 1e-3 ** 0.25],
  ['M', 'eu2006', 10600, 100, 1000 * 100],
  ['M', 'eu2006', 600.1, 1000, 10 * 1000],
  ['M', 'eu2006', 420, 3e4, 1 * 3e4],
  ['M', 'eu2006', 470, 50, 100 * 10 ** 0.4],
];

for (const [mark, set, nm, time, dose] of printed) {
  test(`[${mark}] ${set} prints ${dose.toPrecision(4)} J/m² for the eye at ${nm} nm, ${time} s`, () => {
    const limit = exposureLimit(set, eye(nm * 1e-9, time));
    // the same formula in doubles: only rounding may differ
    expect(limit.radiantExposure / dose).toBeCloseTo(1, 12);
    expect(limit.irradiance * time).toBeCloseTo(limit.radiantExposure, 9);
    expect(evidenceMarks[weakestEvidence(limit.basis)]).toBe(mark);
  });
}

test('an extended source follows the short formula to T2 and then stays level', () => {
  // Directive 2006/25/EC, table 2.3, from memory: 18 t^0.75 C_E, then 18 C_E T2^-0.25; 50 mrad gives C_E 33.3, T2 31.07 s
  const at = (time: number) => exposureLimit('eu2006', eye(650e-9, time, 50e-3)).irradiance;
  expect(at(20)).toBeCloseTo((18 * 20 ** -0.25 * 50) / 1.5, 9);
  expect(at(31.0731861520201)).toBeCloseTo((18 * 31.0731861520201 ** -0.25 * 50) / 1.5, 6);
  expect(at(1000)).toBeCloseTo((18 * 31.0731861520201 ** -0.25 * 50) / 1.5, 6);
  expect(at(1000)).toBe(at(30000));
});

test('photochemistry and heat are judged apart, and the lower one governs', () => {
  // BGI 832, table 1: read
  const blue = limitsByHarm('icnirp2013', eye(445e-9, 100));
  expect(blue.map(({ harm, irradiance }) => [harm, irradiance])).toEqual([
    ['heat on the retina', 10],
    ['photochemistry on the retina', 1],
  ]);
  expect(exposureLimit('icnirp2013', eye(445e-9, 100)).harm).toBe('photochemistry on the retina');
  expect(exposureLimit('icnirp2013', eye(520e-9, 100)).harm).toBe('heat on the retina');
  expect(limitsByHarm('eu2006', eye(445e-9, 1))).toHaveLength(1);
});

test('from 1250 to 1400 nm the skin caps icnirp2013 at every time, with the skin’s stop', () => {
  // ICNIRP 2013, from memory; at 1400 nm and 1 s the retina alone would be allowed 90·10⁶ J/m²
  const capped = exposureLimit('icnirp2013', eye(1399e-9, 1));
  expect(capped.radiantExposure).toBeCloseTo(1.1e4 * 5, 6);
  expect(capped.averagingDiameter).toBe(3.5e-3);
  expect(exposureLimit('icnirp2013', eye(1310e-9, 100)).harm).toBe('front of the eye, infrared');
  expect(exposureLimit('icnirp2013', eye(1240e-9, 100)).averagingDiameter).toBe(7e-3);
  expect(exposureLimit('eu2006', eye(1399e-9, 1)).radiantExposure).toBeCloseTo(90 * 8, 9);
});

test('the skin has the eye’s numbers outside 400 to 1400 nm, over its own stop', () => {
  for (const [nm, time] of [
    [350, 1],
    [1550, 1e-6],
    [10600, 100],
  ] as const) {
    const [ofEye, ofSkin] = (['eye', 'skin'] as const).map((tissue) =>
      exposureLimit('eu2006', { ...eye(nm * 1e-9, time), tissue }),
    ) as [ExposureLimit, ExposureLimit];
    expect(ofSkin.irradiance).toBe(ofEye.irradiance);
    expect(ofSkin.averagingDiameter).toBe(3.5e-3);
    expect(ofSkin.harm).toBe('skin');
  }
});

test('the size of the source plays no part for the skin', () => {
  const at = (sourceAngle: number | null) =>
    exposureLimit('eu2006', { ...eye(532e-9, 10, sourceAngle), tissue: 'skin' }).irradiance;
  expect(at(0.1)).toBe(at(null));
});

test('a fingertip in a focused visible beam is above the limit from about 19 mW on', () => {
  // 2000 W/m² over 3.5 mm, Directive 2006/25/EC, table 2.4: read
  const limit = exposureLimit('eu2006', { ...eye(532e-9, 10), tissue: 'skin' });
  expect(powerAtLimit(limit)).toBeCloseTo(19.24e-3, 5);
});

const refused: readonly (readonly [string, Exposure])[] = [
  ['314.9 nm', eye(314.9e-9, 1)],
  ['1.01 mm', eye(1.01e-3, 1)],
  ['no wavelength', eye(Number.NaN, 1)],
  ['a negative wavelength', eye(-532e-9, 1)],
  ['99 fs', eye(532e-9, 99e-15)],
  ['30 001 s', eye(532e-9, 30001)],
  ['no time', eye(532e-9, Number.NaN)],
  ['endless time', eye(532e-9, Infinity)],
  ['0.9 ns in the ultraviolet', eye(350e-9, 0.9e-9)],
  ['0.9 ns at 10.6 µm', eye(10.6e-6, 0.9e-9)],
  ['a negative angle', eye(532e-9, 1, -1e-3)],
  ['an angle beyond a half turn', eye(532e-9, 1, 4)],
];

for (const [what, exposure] of refused) {
  test(`${what} is refused as outside what is covered`, () => {
    for (const set of limitSets) {
      expect(() => exposureLimit(set, exposure)).toThrow(OutOfRange);
      expect(() => exposureLimit(set, exposure)).toThrow(/outside what this tool covers|is no angle/u);
    }
  });
}

test('the ends of what is covered belong to it', () => {
  for (const exposure of [
    eye(315e-9, 1),
    eye(1e-3, 1),
    eye(532e-9, 100e-15),
    eye(532e-9, 3e4),
    eye(350e-9, 1e-9),
    eye(532e-9, 1, 0),
  ]) {
    expect(exposureLimit('eu2006', exposure).irradiance).toBeGreaterThan(0);
  }
});

test('a limit says its set, time, wavelength, source, stop and formula', () => {
  expect(exposureLimit('icnirp2013', eye(532e-9, 10))).toMatchObject({
    set: 'icnirp2013',
    tissue: 'eye',
    wavelength: 532e-9,
    exposureTime: 10,
    sourceAngle: 1.5e-3,
    averagingDiameter: 7e-3,
    formula: '10 C_A C_C W/m²',
  });
  expect(exposureLimit('eu2006', eye(532e-9, 1)).formula).toBe('18 t^0.75 C_E J/m²');
  expect(exposureLimit('eu2006', eye(532e-9, 1e-8)).formula).toBe('5e-3 C_E J/m²');
  expect(exposureLimit('eu2006', eye(650e-9, 100, 0.01)).formula).toBe('18 T_2^-0.25 C_A C_C C_E W/m²');
});
