import { expect, test } from 'vitest';
import { OutOfRange } from '../out-of-range.ts';
import { gaussLegendre, gaussLegendreOn } from './gauss-legendre.ts';

// Source: Abramowitz & Stegun table 25.4 (from memory), n = 3: ±√(3/5), 0 with 5/9, 8/9.
test('three points stand where the handbook prints them', () => {
  const { nodes, weights } = gaussLegendre(3);
  expect(nodes[0]).toBeCloseTo(-Math.sqrt(0.6), 15);
  expect(nodes[1]).toBe(0);
  expect(weights[0]).toBeCloseTo(5 / 9, 15);
  expect(weights[1]).toBeCloseTo(8 / 9, 15);
});

// Source: ∫ x^(2k) over [−1, 1] = 2/(2k + 1). Tolerance 1e-13: some hundred roundings.
for (const count of [1, 2, 5, 16, 64, 333]) {
  test(`${count} points integrate every power up to ${2 * count - 1}`, () => {
    const { nodes, weights } = gaussLegendre(count);
    for (let power = 0; power < 2 * count; power += Math.max(1, Math.floor(count / 8))) {
      let sum = 0;
      for (let i = 0; i < count; i++) sum += weights[i]! * nodes[i]! ** power;
      expect(Math.abs(sum - (power % 2 === 0 ? 2 / (power + 1) : 0))).toBeLessThan(1e-13);
    }
  });
}

test('moved to another interval it integrates there', () => {
  const { nodes, weights } = gaussLegendreOn(1, 3, 20);
  let sum = 0;
  for (let i = 0; i < 20; i++) sum += weights[i]! / nodes[i]!;
  expect(sum).toBeCloseTo(Math.log(3), 14);
});

test('the same count is computed once', () => {
  expect(gaussLegendre(12)).toBe(gaussLegendre(12));
});

test('no points and half points are refused', () => {
  expect(() => gaussLegendre(0)).toThrow(OutOfRange);
  expect(() => gaussLegendre(2.5)).toThrow(OutOfRange);
});
