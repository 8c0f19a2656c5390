import { expect, test } from 'vitest';
import type { Reading } from './reading.ts';
import { noFigures, noiseOf, rateOf, withReading } from './running-figures.ts';

const after = (readings: readonly Reading[]) => readings.reduce(withReading, noFigures);
const at = (t: number, value: number | null, saturated = false): Reading => ({ t, value, saturated });

/** Independent and of standard deviation 1, by twelve evenly spread draws of a linear congruential generator. */
function draws(count: number): readonly number[] {
  let state = 12345;
  const uniform = () => {
    state = (1664525 * state + 1013904223) % 2 ** 32;
    return state / 2 ** 32;
  };
  return Array.from({ length: count }, () => Array.from({ length: 12 }, uniform).reduce((a, b) => a + b) - 6);
}

test('noise is told apart from a slow change', () => {
  // the drift is five standard deviations over the whole, a hundredth of one from reading to reading
  const noise = noiseOf(after(draws(500).map((draw, index) => at(index * 10, 100 + draw + 0.01 * index))));
  // of some 64 steps; such an estimate scatters by 1/√(2·64/1.5) ≈ 11 %: three times that
  expect(noise).toBeGreaterThan(0.67);
  expect(noise).toBeLessThan(1.33);
});

test('the rate is that of late', () => {
  const slow = Array.from({ length: 50 }, (_, index) => at(index * 1000, 1));
  const fast = Array.from({ length: 700 }, (_, index) => at(49_000 + index * 2, 1));
  expect(rateOf(after(slow))).toBeCloseTo(1, 6);
  // eleven times the memory of 64: (1 − 1/64)^700 · 500 ≈ 0.008 of the slow beginning is left
  expect(rateOf(after([...slow, ...fast]))).toBeGreaterThan(490);
});

test('a gap is no step, and a meter at its end tells nothing of the noise', () => {
  const steady = Array.from({ length: 20 }, (_, index) => at(index, 5));
  const broken = [...steady, at(20, null), at(100_000, 900), at(100_001, 900)];
  expect(noiseOf(after(broken))).toBe(0);
  expect(rateOf(after(broken))).toBeCloseTo(1000, 6);
  expect(noiseOf(after([...steady, at(20, 50, true), at(21, 5)]))).toBe(0);
});

test('nothing is said of too little', () => {
  expect(rateOf(noFigures)).toBeNull();
  expect(noiseOf(after([at(0, 1), at(1, 2)]))).toBeNull();
});
