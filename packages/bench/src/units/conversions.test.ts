import { describe, expect, test } from 'vitest';
import reference from '../../reference/units.json' with { type: 'json' };
import type { Dimension } from './dimension.ts';
import { readQuantity } from './read-quantity.ts';

function siValue(text: string, dimension: Dimension): number {
  const read = readQuantity(text, dimension);
  if (!read.ok) throw new Error(`${read.what}. ${read.mend}`);
  return read.value;
}

describe(`units agree with other hands (${reference.obtained})`, () => {
  for (const [text, dimension, value] of reference.exact as [string, Dimension, number][]) {
    // Exactly: a reading is rounded once, to the nearest double, so nothing is left to tolerate.
    test(`${text} is ${value}`, () => expect(siValue(text, dimension)).toBe(value));
  }
  for (const [text, dimension, value] of reference.rounded as [string, Dimension, number][]) {
    // An exponential or a logarithm of the platform (below 1 ulp each) follows two roundings, magnified by at most
    // the exponent, 14 for −60 dBm: 14 · 1.1e-16 and a little.
    test(`${text} is ${value}`, () =>
      expect(Math.abs(siValue(text, dimension) / value - 1)).toBeLessThan(4e-15));
  }
});

/** Printed values: strings, so that their digits tell how far to trust them. */
const printed = {
  source: 'NIST Special Publication 811 (2008), appendix B.8, and its neper entry',
  obtained: 'from memory',
  rows: [
    ['1 in', 'length', '0.0254'],
    ['1 thou', 'length', '0.0000254'],
    ['1 ft', 'length', '0.3048'],
    ['1 Å', 'length', '0.0000000001'],
    ['1°', 'angle', '0.01745329'],
    ['1 arcmin', 'angle', '0.0002908882'],
    ['1 arcsec', 'angle', '0.000004848137'],
    // A neper of field is 8.685889638 dB, and the power goes with the square of the field: exp(−2).
    ['8.685889638 dB', 'loss', '2.000000000'],
  ],
} as const;

describe(`units agree with ${printed.source} (${printed.obtained})`, () => {
  for (const [text, dimension, value] of printed.rows) {
    const halfLastPlace = 0.5 * 10 ** -(value.split('.')[1] ?? '').length;
    test(`${text} is ${value}`, () =>
      // A millionth more for the subtraction itself.
      expect(Math.abs(siValue(text, dimension) - Number(value))).toBeLessThan(halfLastPlace * (1 + 1e-6)));
  }
});

describe('units agree with their definitions', () => {
  test('an inch is 25.4 mm, exactly (international yard and pound agreement of 1959, from memory)', () =>
    expect(siValue('1 in', 'length')).toBe(siValue('25.4 mm', 'length')));
  test('a decibel is a tenth of a factor of ten: 10 dB leave a tenth, 20 dB/km a hundredth after 1 km', () => {
    // One rounding of the loss and one of exp: 2.3 · 1.1e-16 and 1 ulp.
    expect(Math.exp(-siValue('10 dB', 'loss'))).toBeCloseTo(0.1, 15);
    expect(Math.exp(-siValue('20 dB/km', 'attenuation') * 1000)).toBeCloseTo(0.01, 15);
  });
  test('dBm counts from one milliwatt: 0 dBm is 1 mW, 10 dBm is 10 mW', () => {
    expect(siValue('0 dBm', 'power')).toBe(0.001);
    expect(siValue('10 dBm', 'power')).toBeCloseTo(0.01, 15);
  });
  test('half the light is lost with 3.01 dB (10 · lg 2 = 3.0103) and with 50 %', () => {
    expect(siValue('50 %', 'loss')).toBeCloseTo(Math.LN2, 15);
    expect(siValue('3.0103 dB', 'loss')).toBeCloseTo(Math.LN2, 6); // 3.0103 is 10 lg 2 to five digits
  });
  test('a right angle is 90°, 5400 arcmin and 324000 arcsec', () => {
    expect(siValue('90°', 'angle')).toBe(Math.PI / 2);
    expect(siValue('5400 arcmin', 'angle')).toBe(Math.PI / 2);
    expect(siValue('324000 arcsec', 'angle')).toBe(Math.PI / 2);
  });
  test('80 turns of an 80 threads-an-inch screw advance an inch', () =>
    // The pitch and the product are rounded once each.
    expect(80 * siValue('80 tpi', 'screwPitch')).toBeCloseTo(0.0254, 16));
});
