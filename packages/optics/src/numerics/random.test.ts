import { expect, test } from 'vitest';
import { OutOfRange } from '../out-of-range.ts';
import { mersenneTwister, normalFrom, seededUniform } from './random.ts';

// Source: ISO/IEC 14882 (C++), [rand.predef], mt19937 (from memory): the 10000th number of the default seed 5489.
test('the 10000th number is the one the C++ standard demands', () => {
  const next = mersenneTwister(5489);
  let last = 0;
  for (let i = 0; i < 10_000; i++) last = next();
  expect(last).toBe(4123659995);
});

// Source: NumPy, RandomState(12345).random_sample(3), run once.
test('uniform numbers are those of NumPy for the same seed', () => {
  const uniform = seededUniform(12345);
  expect([uniform(), uniform(), uniform()]).toEqual([
    0.9296160928171479, 0.3163755545817859, 0.18391881167709445,
  ]);
});

test('equal seeds give equal streams, other seeds others, and streams do not disturb one another', () => {
  const one = seededUniform(7);
  const same = seededUniform(7);
  const other = seededUniform(8);
  const first = [one(), one()];
  other();
  expect([same(), same()]).toEqual(first);
  expect(seededUniform(8)()).not.toBe(first[0]);
});

test('normal numbers have mean 0, deviation 1 and 5 % beyond 1.96', () => {
  const uniform = seededUniform(1);
  const count = 20_000;
  let sum = 0;
  let squares = 0;
  let beyond = 0;
  for (let i = 0; i < count; i++) {
    const z = normalFrom(uniform);
    sum += z;
    squares += z * z;
    if (Math.abs(z) > 1.959964) beyond++;
  }
  // four standard errors each: 1/√n, √(2/n), √(0.05·0.95/n)
  expect(Math.abs(sum / count)).toBeLessThan(4 / Math.sqrt(count));
  expect(Math.abs(squares / count - 1)).toBeLessThan(4 * Math.sqrt(2 / count));
  expect(Math.abs(beyond / count - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / count));
  expect(normalFrom(() => 0)).toBeGreaterThan(-10);
});

test('a seed is a whole number of 32 bits', () => {
  expect(() => seededUniform(-1)).toThrow(OutOfRange);
  expect(() => seededUniform(0.5)).toThrow(OutOfRange);
  expect(() => seededUniform(2 ** 32)).toThrow(OutOfRange);
  expect(seededUniform(2 ** 32 - 1)()).toBeLessThan(1);
});
