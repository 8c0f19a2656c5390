import { expect, test } from 'vitest';
import { OutOfRange } from '../out-of-range.ts';
import { brentMinimum, brentRoot } from './brent.ts';

test('a root is found to the last digit, in few evaluations', () => {
  let evaluations = 0;
  const root = brentRoot(
    (x) => {
      evaluations++;
      return Math.cos(x) - x;
    },
    0,
    1,
  );
  expect(root).toBeCloseTo(0.7390851332151607, 15); // the fixed point of the cosine, OEIS A003957 (from memory)
  expect(evaluations).toBeLessThan(12);
});

test('a root at an end, a triple root and a root of a jump are found', () => {
  expect(brentRoot((x) => x, 0, 1)).toBe(0);
  expect(Math.abs(brentRoot((x) => x ** 3, -1, 1.7))).toBeLessThan(1e-5);
  expect(brentRoot((x) => (x < 0.3 ? -1 : 1), 0, 1)).toBeCloseTo(0.3, 14);
});

test('values too small to multiply still show their signs', () => {
  expect(brentRoot((x) => 1e-200 * (x - 0.5), 0, 1)).toBeCloseTo(0.5, 14);
});

test('ends of one sign are refused', () => {
  expect(() => brentRoot((x) => x * x + 1, -1, 1)).toThrow(OutOfRange);
  expect(() => brentRoot(() => Number.NaN, -1, 1)).toThrow(OutOfRange);
});

// x is known to √ε ≈ 1.5e-8 only: the function is flat at its minimum.
test('a minimum is found and says why it stopped', () => {
  const least = brentMinimum((x) => (x - 2) ** 2 + 0.25, -3, 10);
  expect(least.x).toBeCloseTo(2, 7);
  expect(least.value).toBeCloseTo(0.25, 14);
  expect(least.reason).toBe('converged');
});

test('a minimum at the end of the interval is approached', () => {
  expect(brentMinimum((x) => x, 1, 4).x).toBeCloseTo(1, 6);
});
