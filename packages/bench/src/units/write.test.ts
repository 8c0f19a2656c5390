import { describe, expect, test } from 'vitest';
import type { Quantity, Shape } from '../quantity/quantity.ts';
import type { Dimension } from './dimension.ts';
import { exactText } from './exact-text.ts';
import { writeDecibel, writeDecibelMilliwatt, writeInterval, writeQuantity, writeValue } from './write.ts';

// How numbers look on a bench: common practice, no source. Expected texts by hand.

describe('a value takes the unit people use at its size', () => {
  const rows: readonly (readonly [number, Dimension, string])[] = [
    [8.2e-6, 'length', '8.2 µm'],
    [635e-9, 'length', '635 nm'],
    [0.82e-3, 'length', '0.82 mm'],
    [125e-6, 'length', '125 µm'],
    [0.22, 'length', '220 mm'],
    [18, 'length', '18 m'],
    [-1.234567e-3, 'length', '−1.23 mm'],
    [0, 'length', '0 mm'],
    [12e-3, 'power', '12 mW'],
    [0.8e-3, 'power', '0.8 mW'],
    [3.2e-12, 'power', '3.2 pW'],
    [0.25e-3, 'angle', '0.25 mrad'],
    [Math.PI / 4, 'angle', '45°'],
    [0.97, 'fraction', '97 %'],
    [1.15, 'number', '1.15'],
    [0.25, 'waves', '0.25 waves'],
    [(15e-3 * Math.LN10) / 10, 'attenuation', '15 dB/km'],
    [(0.2 * Math.LN10) / 10, 'attenuation', '0.2 dB/m'],
    [(0.3 * Math.LN10) / 10, 'loss', '0.3 dB'],
    [0.25e-3, 'screwPitch', '0.25 mm'],
    [7.9e-3, 'anglePerTurn', '7.9 mrad/turn'],
    [293.15, 'temperature', '20 °C'],
    [77, 'temperature', '77 K'],
    [100, 'irradiance', '100 W/m²'],
    [3e-9, 'time', '3 ns'],
    [9.9996e-7, 'length', '1 µm'],
    [0.99996, 'length', '1 m'],
    [12_345_678, 'length', '12300 km'],
    [1e-18, 'length', '1e−9 nm'],
  ];
  for (const [value, dimension, text] of rows) {
    test(`${value} is ${text}`, () => expect(writeValue(value, dimension)).toBe(text));
  }
  test('in a chosen unit and to chosen digits', () => {
    expect(writeValue(1.55e-6, 'length', 4, 'nm')).toBe('1550 nm');
    expect(writeValue(100, 'irradiance', 3, 'mW/cm²')).toBe('10 mW/cm²');
    expect(writeValue(Math.PI / 4, 'angle', 3, 'mrad')).toBe('785 mrad');
    expect(() => writeValue(1, 'length', 3, 'furlong')).toThrow(RangeError);
  });
  test('what is not finite has no unit', () => {
    expect(writeValue(Infinity, 'length')).toBe('∞');
    expect(writeValue(-Infinity, 'length')).toBe('−∞');
    expect(writeValue(Number.NaN, 'length')).toBe('unknown');
  });
});

describe('a quantity shows as many digits as its uncertainty allows', () => {
  const rows: readonly (readonly [number, number, Shape, Dimension, string])[] = [
    [1.1e-3, 0.1e-3, 'normal', 'length', '1.10 mm ± 0.10 mm'],
    [4.6e-3, 0.2e-3 / Math.sqrt(3), 'rectangular', 'length', '4.60 mm within 0.20 mm'],
    [633e-9, 12.4e-9, 'normal', 'length', '633 nm ± 12 nm'],
    [1234e-9, 120e-9, 'normal', 'length', '1.23 µm ± 0.12 µm'],
    [0, 0.05, 'normal', 'length', '0 mm ± 50 mm'],
    [1e-9, 0.05, 'normal', 'length', '0 mm ± 50 mm'],
    [0.97, 0.01, 'normal', 'fraction', '97.0 % ± 1.0 %'],
    [1.15, 0.05, 'normal', 'number', '1.150 ± 0.050'],
    [12e-3, 5e-3, 'positive', 'power', '12.0 mW ± 5.0 mW'],
    [293.15, 2, 'normal', 'temperature', '20.0 °C ± 2.0 °C'],
    [6.2e-3, 0, 'normal', 'length', '6.2 mm ± 0 mm'],
    [0.0999e-3, 0.00996e-3, 'normal', 'length', '100 µm ± 10 µm'],
  ];
  for (const [value, uncertainty, shape, dimension, text] of rows) {
    test(text, () => {
      const quantity: Quantity = { value, uncertainty, shape, origin: 'measured' };
      expect(writeQuantity(quantity, dimension)).toBe(text);
    });
  }
});

describe('intervals and decibels', () => {
  test('both ends of an interval have one unit and one place', () => {
    expect(writeInterval(0.95e-3, 1.2849e-3, 'length')).toBe('0.95 to 1.28 mm');
    expect(writeInterval(0.032, 0.412, 'fraction', 2)).toBe('3 to 41 %');
    expect(writeInterval(0, Infinity, 'length')).toBe('0 mm to ∞');
  });
  test('decibels have tenths, and hundredths where they are small', () => {
    // 10 · lg: half is −3.01, 0.9 is −0.458, 1.02 is 0.086 (four-figure logarithms, from memory).
    expect(writeDecibel(0.5)).toBe('−3.0 dB');
    expect(writeDecibel(0.9)).toBe('−0.46 dB');
    expect(writeDecibel(1.02)).toBe('+0.09 dB');
    expect(writeDecibel(1)).toBe('0 dB');
    expect(writeDecibel(0)).toBe('−∞ dB');
    expect(writeDecibel(Number.NaN)).toBe('unknown dB');
    expect(writeDecibelMilliwatt(0.5e-3)).toBe('−3.0 dBm');
    expect(writeDecibelMilliwatt(1e-3)).toBe('0 dBm');
    expect(writeDecibelMilliwatt(0.1)).toBe('20.0 dBm');
  });
});

describe('exact text is short where the value was', () => {
  const rows: readonly (readonly [number, Dimension, string])[] = [
    [8.2e-6, 'length', '8.2 µm'],
    [1.55e-6, 'length', '1.55 µm'],
    [Math.PI / 4, 'angle', '45°'],
    [0.3175e-3, 'screwPitch', '0.3175 mm'],
    [-3e-3, 'length', '-3 mm'],
    [293.15, 'temperature', '293.15 K'],
    [0.97, 'fraction', '97 %'],
    [0, 'length', '0 m'],
  ];
  for (const [value, dimension, text] of rows) {
    test(`${value} is ${text}`, () => expect(exactText(value, dimension)).toBe(text));
  }
  test('what is not finite cannot be exported', () =>
    expect(() => exactText(Number.NaN, 'length')).toThrow(RangeError));
});
