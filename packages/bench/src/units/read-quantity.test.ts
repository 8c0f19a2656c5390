import { describe, expect, test } from 'vitest';
import type { Dimension } from './dimension.ts';
import { readQuantity } from './read-quantity.ts';

/** The value alone, read as `dimension`. */
function siValue(text: string, dimension: Dimension): number {
  const read = readQuantity(text, dimension);
  if (!read.ok) throw new Error(`${read.what}. ${read.mend}`);
  return read.value;
}

describe('every quantity of the launch document is read', () => {
  // The example of the launch document, key by key; the SI values are plain decimal shifts, by hand.
  const rows: readonly (readonly [string, Dimension, number])[] = [
    ['520 nm', 'length', 520e-9],
    ['0.82 mm', 'length', 0.82e-3],
    ['0 mm', 'length', 0],
    ['1.15', 'number', 1.15],
    ['0°', 'angle', 0],
    ['220 mm', 'length', 0.22],
    ['45°', 'angle', Math.PI / 4],
    ['97 %', 'fraction', 0.97],
    ['22 mm', 'length', 0.022],
    ['38 mm', 'length', 0.038],
    ['0.25 mm', 'screwPitch', 0.25e-3],
    ['6.2 mm', 'length', 6.2e-3],
    ['635 nm', 'length', 635e-9],
    ['0', 'waves', 0],
    ['0.5 mm', 'screwPitch', 0.5e-3],
    ['8.2 µm', 'length', 8.2e-6],
    ['0.13', 'number', 0.13],
    ['125 µm', 'length', 125e-6],
    ['18 m', 'length', 18],
    ['30 mm', 'length', 0.03],
    ['2', 'turns', 2],
    ['0.8 mW', 'power', 0.8e-3],
    ['1 mW', 'power', 1e-3],
    ['0 µm', 'length', 0],
    ['0 mrad', 'angle', 0],
  ];
  for (const [text, dimension, value] of rows) {
    test(`${text} is ${dimension} ${value}`, () =>
      expect(readQuantity(text, dimension)).toEqual({ ok: true, value, uncertainty: null, shape: 'normal' }));
  }
});

describe('people may write it their way', () => {
  // Each row says the same twice; the second spelling is plain SI.
  const rows: readonly (readonly [string, string, Dimension])[] = [
    ['6.2mm', '6.2e-3 m', 'length'],
    ['  6.2   mm ', '6.2e-3 m', 'length'],
    ['+6.2 mm', '6.2e-3 m', 'length'],
    ['-6.2 mm', '-6.2e-3 m', 'length'],
    ['−6.2 mm', '-6.2e-3 m', 'length'],
    ['.5 mm', '5e-4 m', 'length'],
    ['2.3e-3 mm', '2.3e-6 m', 'length'],
    ['2.3E−3 mm', '2.3e-6 m', 'length'],
    ['2.3×10⁻³ mm', '2.3e-6 m', 'length'],
    ['2.3 x 10^-3 mm', '2.3e-6 m', 'length'],
    ['2.3·10^3 nm', '2.3e-6 m', 'length'],
    ['8 \u00b5m', '8e-6 m', 'length'],
    ['8 \u03bcm', '8e-6 m', 'length'],
    ['8 um', '8e-6 m', 'length'],
    ['5893 \u212b', '5893e-10 m', 'length'],
    ['1/4"', '0.00635 m', 'length'],
    ['0.25 waves', '0.25', 'waves'],
    ['0.25 λ', '0.25', 'waves'],
    ['-0.25 waves', '-0.25', 'waves'],
    ['2 turns', '2', 'turns'],
    ['0.97', '97 %', 'fraction'],
    ['97%', '97 %', 'fraction'],
    ['10 mW/cm^2', '100 W·m^-2', 'irradiance'],
    ['10 mW/cm2', '100 W m⁻²', 'irradiance'],
    ['10 mW·cm⁻²', '100 W/m²', 'irradiance'],
    ['10 mW per cm^2', '100 W/m/m', 'irradiance'],
    ['7.9 mrad per turn', '0.0079 rad/turn', 'anglePerTurn'],
    ['M6×0.25', '0.25 mm', 'screwPitch'],
    ['M6 x 0.25 mm', '0.25 mm', 'screwPitch'],
    ['M2.5x0.2', '0.2 mm/turn', 'screwPitch'],
    ['1/4"-80', '80 tpi', 'screwPitch'],
    ['1/4-80 tpi', '80 tpi', 'screwPitch'],
    ['0.1 /m', '0.1 m^-1', 'attenuation'],
    ['0.1 1/m', '100 km^-1', 'attenuation'],
    ['10 k\u2126', '1e4 ohm', 'resistance'],
    ['293.15 \u212a', '20 °C', 'temperature'],
    ['3 mJ', '3 mW s', 'energy'],
    ['50 Hz', '50 s^-1', 'frequency'],
  ];
  for (const [text, plain, dimension] of rows) {
    test(`${text} is ${plain}`, () => expect(siValue(text, dimension)).toBe(siValue(plain, dimension)));
  }
});

describe('± is a standard uncertainty, within are hard limits', () => {
  test('an uncertainty has its own unit', () =>
    expect(readQuantity('1.1 mm ± 100 µm', 'length')).toEqual({
      ok: true,
      value: 1.1e-3,
      uncertainty: 1e-4,
      shape: 'normal',
    }));
  for (const mark of ['±', '+/-', '+-', '+/−', ' ± ']) {
    test(`\`${mark}\` is ±`, () =>
      expect(readQuantity(`1.1 mm${mark}0.1 mm`, 'length')).toMatchObject({ uncertainty: 1e-4 }));
  }
  test('a share is one of the value, also of a negative one', () => {
    expect(readQuantity('-1.1 mm ± 9 %', 'length')).toMatchObject({ value: -1.1e-3, shape: 'normal' });
    // Two roundings: 9 % and the product.
    expect(readQuantity('-1.1 mm ± 9 %', 'length')).toMatchObject({
      uncertainty: expect.closeTo(0.099e-3, 18),
    });
    expect(readQuantity('1.15 ± 5 %', 'number')).toMatchObject({ uncertainty: expect.closeTo(0.0575, 15) });
  });
  test('hard limits are rectangular, limit/√3 (JCGM 100:2008, 4.3.7, from memory)', () => {
    for (const text of ['4.6 mm within 0.2 mm', '4.6 mm within ±0.2 mm', '4.6 mm within ± 200 µm']) {
      expect(readQuantity(text, 'length')).toEqual({
        ok: true,
        value: 4.6e-3,
        uncertainty: 0.2e-3 / Math.sqrt(3),
        shape: 'rectangular',
      });
    }
  });
  test('per cent behind per cent are points, behind a bare fraction a share', () => {
    expect(readQuantity('97 % ± 1 %', 'fraction')).toMatchObject({ value: 0.97, uncertainty: 0.01 });
    expect(readQuantity('0.97 ± 1 %', 'fraction')).toMatchObject({ value: 0.97, uncertainty: 0.0097 });
    expect(readQuantity('0.97 ± 0.01', 'fraction')).toMatchObject({ value: 0.97, uncertainty: 0.01 });
  });
  test('a point of light lost is more than a hundredth of a neper: d(−ln(1 − x)) = dx/(1 − x)', () =>
    expect(readQuantity('20 % ± 1 %', 'loss')).toMatchObject({
      uncertainty: expect.closeTo(0.01 / 0.8, 15),
    }));
  test('decibels behind a power are a factor', () => {
    // 0.5 dB is a factor e^0.1151: ln(10)/20.
    const expected = { shape: 'positive', uncertainty: expect.closeTo((2e-3 * Math.LN10) / 20, 15) };
    expect(readQuantity('2 mW ± 0.5 dB', 'power')).toMatchObject(expected);
    const minusThree = readQuantity('-3 dBm ± 0.5 dB', 'power');
    expect(minusThree).toMatchObject({ shape: 'positive' });
    if (!minusThree.ok) return;
    expect((minusThree.uncertainty ?? 0) / minusThree.value).toBeCloseTo(Math.LN10 / 20, 14);
  });
  test('narrow limits in decibels are hard, wide ones soft', () => {
    expect(readQuantity('0 dBm within 1 dB', 'power')).toMatchObject({ shape: 'rectangular' });
    expect(readQuantity('0 dBm within 3 dB', 'power')).toMatchObject({ shape: 'positive' });
  });
  test('a temperature is off by kelvins, on either scale', () => {
    expect(readQuantity('20 °C ± 2 °C', 'temperature')).toMatchObject({ value: 293.15, uncertainty: 2 });
    expect(readQuantity('20 °C ± 500 mK', 'temperature')).toMatchObject({ uncertainty: 0.5 });
    expect(readQuantity('293 K ± 2 °C', 'temperature')).toMatchObject({ value: 293, uncertainty: 2 });
  });
  test('a written zero is exact', () =>
    expect(readQuantity('1.1 mm ± 0 mm', 'length')).toEqual({
      ok: true,
      value: 1.1e-3,
      uncertainty: 0,
      shape: 'normal',
    }));
});

describe('no doubt reaches below what is possible', () => {
  test('up to a quarter of the value it is normal, beyond it is positive', () => {
    expect(readQuantity('4 mm ± 1 mm', 'length', { positive: true })).toMatchObject({ shape: 'normal' });
    expect(readQuantity('4 mm ± 1.001 mm', 'length', { positive: true })).toMatchObject({
      shape: 'positive',
    });
    expect(readQuantity('4 mm ± 1.001 mm', 'length', { min: 0 })).toMatchObject({ shape: 'positive' });
    expect(readQuantity('4 mm ± 1.001 mm', 'length', { min: 1e-6 })).toMatchObject({ shape: 'positive' });
  });
  test('what may be negative stays normal', () => {
    expect(readQuantity('4 mm ± 50 mm', 'length')).toMatchObject({ shape: 'normal' });
    expect(readQuantity('0 mm ± 50 mm', 'length')).toMatchObject({ shape: 'normal' });
    expect(readQuantity('0.1 waves ± 0.3 waves', 'waves')).toMatchObject({ shape: 'normal' });
  });
  test('powers, losses and screw pitches cannot be negative by nature', () => {
    expect(readQuantity('0.3 dB ± 0.2 dB', 'loss')).toMatchObject({ shape: 'positive' });
    expect(readQuantity('1 mW ± 40 %', 'power')).toMatchObject({ shape: 'positive' });
    expect(readQuantity('80 tpi ± 30 %', 'screwPitch')).toMatchObject({ shape: 'positive' });
    expect(readQuantity('0 mm', 'screwPitch')).toMatchObject({ ok: false });
    expect(readQuantity('-1 mW', 'power')).toMatchObject({ ok: false });
    expect(readQuantity('0 mW', 'power')).toMatchObject({ ok: true, value: 0 });
  });
});

describe('limits include their ends', () => {
  const limits = { min: 200e-9, max: 12e-6 };
  for (const [text, ok] of [
    ['200 nm', true],
    ['199.9 nm', false],
    ['12 µm', true],
    ['12.001 µm', false],
  ] as const) {
    test(`${text} is ${ok ? 'read' : 'refused'} between 200 nm and 12 µm`, () =>
      expect(readQuantity(text, 'length', limits).ok).toBe(ok));
  }
  test('100 % is a fraction and more is not', () => {
    expect(readQuantity('100 %', 'fraction').ok).toBe(true);
    expect(readQuantity('100.1 %', 'fraction').ok).toBe(false);
    expect(readQuantity('97 % within 3 %', 'fraction').ok).toBe(true);
    expect(readQuantity('97 % within 3.01 %', 'fraction').ok).toBe(false);
  });
  test('a loss of everything has no number', () => {
    expect(readQuantity('99.9 %', 'loss').ok).toBe(true);
    expect(readQuantity('100 %', 'loss').ok).toBe(false);
  });
});
