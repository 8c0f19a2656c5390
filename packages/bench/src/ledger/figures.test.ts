import fc from 'fast-check';
import { expect, test } from 'vitest';
import { expectedText, expectedTexts, intervalText, shareText, statedText } from './figures.ts';

// Expected texts are rounded by hand.

test('a value stands before its interval, both in digits that the interval bears', () => {
  expect(expectedText({ value: 2.13e-3, low: 1.61e-3, high: 2.58e-3 }, 'power')).toBe(
    '2.1 mW (1.6 to 2.6 mW)',
  );
  expect(expectedText({ value: 0.97, low: 0.9612, high: 0.9791 }, 'fraction')).toBe('97 % (96.1 to 97.9 %)');
});

test('a narrow interval gets more digits where light is known well', () => {
  expect(intervalText({ low: 1062.4e-9, high: 1065.6e-9 }, 'length', 'nm')).toBe('1062.4 to 1065.6 nm');
});

test('an efficiency never bears more than three digits', () => {
  expect(intervalText({ low: 0.18211, high: 0.18219 }, 'fraction')).toBeNull();
  expect(expectedText({ value: 0.182151, low: 0.18211, high: 0.18219 }, 'fraction')).toBe('18.2 %');
});

test('what is exact has no interval', () => {
  const exact = { value: 8e-3, uncertainty: 0, shape: 'normal', origin: 'measured' } as const;
  expect(statedText(exact, 'length')).toBe('8 mm');
});

test('a stated uncertainty becomes the interval of 90 %', () => {
  // 1.645 standard deviations either side, the 95 % point of the normal law (tables of the normal distribution)
  const stated = { value: 10e-3, uncertainty: 1e-3, shape: 'normal', origin: 'measured' } as const;
  expect(statedText(stated, 'power')).toBe('10 mW (8.4 to 11.6 mW)');
});

test('a value and its interval share a unit, and a lower end that would be a row of zeros is left out', () => {
  expect(expectedText({ value: 98e-6, low: 0, high: 0.21e-3 }, 'power')).toBe('0.098 mW (up to 0.21 mW)');
  expect(expectedText({ value: 0.02, low: 0, high: 0.039 }, 'fraction')).toBe('2 % (up to 3.9 %)');
  expect(expectedText({ value: 12e-6, low: 3e-12, high: 2.4e-3 }, 'power')).toBe('12 µW (up to 2.4 mW)');
  const meter = { value: 12e-6, low: 1e-12, high: 1.13e-3 };
  expect(expectedTexts(meter, meter, 'power')[0]).toBe('0.012 mW (up to 1.1 mW)');
});

test('two that are compared share unit and place, so that the less never looks the more', () => {
  const guided = { value: 220e-6, low: 140e-6, high: 340e-6 };
  expect(expectedTexts({ value: 1.23e-3, low: 162e-6, high: 3.44e-3 }, guided, 'power')).toEqual([
    '1.23 mW (0.16 to 3.44 mW)',
    '0.22 mW (0.14 to 0.34 mW)',
  ]);
  const pairs = fc.array(fc.double({ min: 1e-7, max: 1e-2, noNaN: true }), { minLength: 4, maxLength: 4 });
  const lowOf = (text: string) => Number(/\(([\d.]+) to/u.exec(text)?.[1] ?? Number.NaN);
  fc.assert(
    fc.property(pairs, (some) => {
      const [a, b, c, d] = some.toSorted((x, y) => x - y) as [number, number, number, number];
      const [reading, less] = expectedTexts(
        { value: c, low: b, high: d },
        { value: b, low: a, high: c },
        'power',
      );
      // where an interval does not show there is nothing to compare
      if (Number.isNaN(lowOf(reading)) || Number.isNaN(lowOf(less))) return;
      expect(lowOf(reading)).toBeGreaterThanOrEqual(lowOf(less));
    }),
    { numRuns: 300 },
  );
});

test('what is too little to measure is said in words', () => {
  expect(shareText(1e-9)).toBe('under 0.0001 %');
  expect(shareText(0)).toBe('0 %');
  expect(expectedText({ value: 1e-14, low: 0, high: 1e-6 }, 'power')).toBe('under 1 pW (up to 1.0 µW)');
});

test('rounding moves no end of an interval by more than a tenth of its width, short of the three-digit limit', () => {
  const ends = fc.tuple(
    fc.double({ min: 0.05, max: 0.8, noNaN: true }),
    fc.double({ min: 0.1, max: 0.19, noNaN: true }),
  );
  fc.assert(
    fc.property(ends, ([low, width]) => {
      const high = low + width;
      const shown = /^([\d.]+) to ([\d.]+) %$/u.exec(intervalText({ low, high }, 'fraction') ?? '');
      expect(Math.abs(Number(shown?.[1]) / 100 - low)).toBeLessThanOrEqual(width / 10 + 1e-12);
      expect(Math.abs(Number(shown?.[2]) / 100 - high)).toBeLessThanOrEqual(width / 10 + 1e-12);
    }),
  );
});
