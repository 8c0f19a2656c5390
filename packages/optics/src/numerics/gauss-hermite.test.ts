import { expect, test } from 'vitest';
import { gaussHermite } from './gauss-hermite.ts';

/** Moments of the standard normal distribution are 1, 1, 3, 15, 105, …: (2k − 1)!! (common knowledge, from memory). */
test.each([1, 2, 3, 4, 5, 8, 13, 20, 33, 48, 64])(
  '%i nodes integrate the moments of the normal distribution',
  (count) => {
    const { nodes, weights } = gaussHermite(count);
    let doubleFactorial = 1;
    for (let k = 0; 2 * k <= Math.min(2 * count - 1, 24); k += 1) {
      if (k > 0) doubleFactorial *= 2 * k - 1;
      let sum = 0;
      nodes.forEach((x, i) => {
        sum += weights[i]! * x ** (2 * k);
      });
      expect(Math.abs(sum / doubleFactorial - 1)).toBeLessThan(1e-11); // rounding of high powers
    }
    expect([...nodes].every((x, i) => i === 0 || x > nodes[i - 1]!)).toBe(true);
  },
);
