import { expect, test } from 'vitest';
import { lastDigit } from './last-digit.ts';

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
