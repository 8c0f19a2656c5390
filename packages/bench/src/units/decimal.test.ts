import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  decibel,
  decimal,
  fromNumber,
  inverse,
  leadingPlace,
  pi,
  power,
  roundedAt,
  times,
  toNumber,
} from './decimal.ts';
import { toSignificant, withoutTrailingZeros, writeRounded } from './number-writing.ts';

describe('a decimal is what was written', () => {
  test('a double survives being taken apart', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(toNumber(fromNumber(value))).toBe(value + 0); // −0 has no sign here
      }),
    );
  });
  test('π and ln(10)/10 are the nearest doubles of JavaScript', () => {
    expect(toNumber(pi)).toBe(Math.PI);
    // Math.LN10 is rounded already, and the quotient again.
    expect(Math.abs(toNumber(decibel) / (Math.LN10 / 10) - 1)).toBeLessThan(3e-16);
  });
  test('a third times three is one: fifty digits are kept until the end', () => {
    const third = inverse(decimal(3));
    expect(toNumber(times(third, decimal(3)))).toBe(1);
    expect(toNumber(third)).toBe(1 / 3);
    expect(toNumber(power(decimal(25, -1), -2))).toBe(0.16);
    expect(toNumber(inverse(decimal(-4)))).toBe(-0.25);
  });
  test('what is too large or too small for a double says so', () => {
    expect(toNumber(decimal(1, 1e12))).toBe(Infinity);
    expect(toNumber(decimal(-1, 1e12))).toBe(-Infinity);
    expect(toNumber(decimal(1, -1e12))).toBe(0);
  });
});

describe('rounding', () => {
  // Every expectation by hand.
  test('halves go away from zero', () => {
    expect(roundedAt(decimal(25, -1), 0)).toBe(3n);
    expect(roundedAt(decimal(-25, -1), 0)).toBe(-3n);
    expect(roundedAt(decimal(249, -2), 0)).toBe(2n);
    expect(roundedAt(decimal(3), -2)).toBe(300n);
  });
  test('the first digit has a place', () => {
    expect(leadingPlace(decimal(250))).toBe(2);
    expect(leadingPlace(decimal(-25, -2))).toBe(-1);
    expect(leadingPlace(decimal(0))).toBe(0);
    expect(leadingPlace(inverse(decimal(3)))).toBe(-1);
  });
  for (const [value, digits, text] of [
    [8.2, 3, '8.20'],
    [9.996, 3, '10.0'],
    [-9.996, 3, '-10.0'],
    [1549.6, 2, '1500'],
    [0.000123, 2, '0.00012'],
    [0.0000123, 2, '1.2e-5'],
    [12_345_678, 2, '1.2e7'],
    [9_999_999, 1, '1e7'],
    [0, 3, '0.00'],
  ] as const) {
    test(`${value} to ${digits} digits is ${text}`, () =>
      expect(writeRounded(toSignificant(fromNumber(value), digits))).toBe(text));
  }
  test('zeros that only fill places are dropped', () => {
    expect(writeRounded(withoutTrailingZeros({ count: 820n, place: -2 }))).toBe('8.2');
    expect(writeRounded(withoutTrailingZeros({ count: 1500n, place: 0 }))).toBe('1500');
    expect(writeRounded(withoutTrailingZeros({ count: 0n, place: -2 }))).toBe('0');
  });
});
