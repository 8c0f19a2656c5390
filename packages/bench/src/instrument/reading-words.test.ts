import { expect, test } from 'vitest';
import { axisWords, noiseWords, rateWords, readingWords, readTypedReading } from './reading-words.ts';

// What a person would write down; common practice, no source.
for (const [value, unit, words] of [
  [1.2e-3, 'W', '1.200 mW'],
  [-3.2e-9, 'W', '−3.200 nW'],
  [0.0123456, 'V', '12.35 mV'],
  [4.2e-6, 'A', '4.200 µA'],
  [512, 'relative', '512.0'],
  [1, 'step', '+1 step'],
  [-2, 'step', '−2 steps'],
  [0, 'step', '0 steps'],
] as const) {
  test(`${value} of ${unit} is read as ${words}`, () => expect(readingWords(value, unit)).toBe(words));
}

test('neighbours on an axis are never written alike', () => {
  expect(axisWords([0.98e-3, 0.99e-3, 1e-3], 'W')).toEqual({
    numbers: ['0.98', '0.99', '1.00'],
    unit: 'mW',
  });
  expect(axisWords([42.5e-6, 45e-6, 47.5e-6], 'W').numbers).toEqual(['42.5', '45.0', '47.5']);
  expect(axisWords([43, 44, 45], 'relative').numbers).toEqual(['43', '44', '45']);
  expect(axisWords([0, 200, 400], 'relative').numbers).toEqual(['0', '200', '400']);
  for (const apart of [1e-9, 1e-6, 2.5e-4, 0.1]) {
    const { numbers } = axisWords(
      [0, 1, 2, 3].map((step) => 1 + step * apart),
      'V',
    );
    expect(new Set(numbers).size).toBe(4);
  }
});

test('a rate is counted a second, or seconds a reading where it is slow', () => {
  expect(rateWords(9.84)).toBe('9.8 a second');
  expect(rateWords(0.25)).toBe('one in 4 s');
});

test('noise is told with its share of the light, where there is light', () => {
  expect(noiseWords(2e-6, 'W', 1e-3)).toBe('2 µW (0.2 %)');
  expect(noiseWords(2e-6, 'W', null)).toBe('2 µW');
  expect(noiseWords(2e-6, 'W', 0)).toBe('2 µW');
});

test('a typed reading takes the unit of the one before, and with none it must be written', () => {
  expect(readTypedReading('1,25', 'W', 2e-3)).toEqual({ ok: true, value: 1.25e-3 });
  expect(readTypedReading('-3', 'V', 2e-3)).toEqual({ ok: true, value: -3e-3 });
  // a decibel over a milliwatt: 10^(−3/10) mW
  expect(readTypedReading('−3 dBm', 'W', null)).toMatchObject({ ok: true });
  expect(readTypedReading('12', 'W', null)).toMatchObject({ ok: false, mend: expect.stringContaining('mW') });
  expect(readTypedReading('12', 'relative', null)).toEqual({ ok: true, value: 12 });
  expect(readTypedReading('plenty', 'relative', 3)).toMatchObject({ ok: false });
});
