import { expect, test } from 'vitest';
import { lastDigit, positionDigit } from './last-digit.ts';

// elementary: what the numbers are multiples of

test.each([
  [[3, 4.5, 7], 0.5],
  [[12.25, 10], 0.25],
  [[0.0123, 0.4], 1e-4],
  [[0.0045105, 0.009021], 5e-7],
  [[0, 1e-3], 1e-3],
] as const)('%j were read in steps of %d', (readings, step) => {
  expect(lastDigit(readings) / step).toBeCloseTo(1, 9);
});

test('numbers that were not read off a scale have no last digit', () => {
  expect(lastDigit([Math.PI, Math.E, Math.SQRT2])).toBe(0);
  expect(lastDigit([0, 0])).toBe(0);
});

test('positions that were read off where they happened to be have a last digit', () => {
  expect(positionDigit([5.0, 5.13, 5.25, 5.38, 5.5, 5.63, 5.75])).toBeCloseTo(0.01, 9);
});

test('positions that were set, evenly or finer in the middle, have none', () => {
  expect(positionDigit([5, 5.2, 5.4, 5.6, 5.8, 6])).toBe(0);
  expect(positionDigit([5, 5.2, 5.4, 5.5, 5.6, 5.7, 5.8, 6, 6.2, 6.4])).toBe(0);
});
