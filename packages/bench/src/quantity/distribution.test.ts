import { describe, expect, test } from 'vitest';
import reference from '../../reference/distributions.json' with { type: 'json' };
import { Refusal } from '../refusal.ts';
import { exact } from './combine.ts';
import { cumulativeOf, intervalOf, quantileOf } from './distribution.ts';
import type { Quantity, Shape } from './quantity.ts';

function focalLength(shape: Shape): Quantity {
  return { value: reference.value, uncertainty: reference.uncertainty, shape, origin: 'measured' };
}

describe(`the shapes of doubt (${reference.obtained})`, () => {
  for (const [shape, p, quantile] of reference.rows as [Shape, number, number][]) {
    // The normal quantile is good to 1e-13 of max(1, |z|), and here |z| < 5 and the spread is below the value.
    test(`${shape}: ${p} lie below ${quantile}`, () => {
      expect(Math.abs(quantileOf(focalLength(shape), p) / quantile - 1)).toBeLessThan(1e-12);
    });
    // Backwards the same, in probability: the density is below 1.
    test(`${shape}: below ${quantile} lie ${p}`, () => {
      expect(Math.abs(cumulativeOf(focalLength(shape), quantile) - p)).toBeLessThan(1e-12);
    });
  }
});

describe('the ends of the shapes', () => {
  test('hard limits are hard: ±√3 uncertainties and nothing beyond', () => {
    const hard: Quantity = {
      value: 1,
      uncertainty: 1 / Math.sqrt(3),
      shape: 'rectangular',
      origin: 'datasheet',
    };
    // One rounding of √3 · 1/√3.
    expect(quantileOf(hard, 0)).toBeCloseTo(0, 15);
    expect(quantileOf(hard, 1)).toBeCloseTo(2, 15);
    expect(cumulativeOf(hard, -0.001)).toBe(0);
    expect(cumulativeOf(hard, 2.001)).toBe(1);
  });
  test('what is positive never reaches zero', () => {
    const loss: Quantity = { value: 0.3, uncertainty: 0.6, shape: 'positive', origin: 'assumed' };
    expect(quantileOf(loss, 1e-12)).toBeGreaterThan(0);
    expect(quantileOf(loss, 0)).toBe(0);
    expect(cumulativeOf(loss, 0)).toBe(0);
    expect(cumulativeOf(loss, -1)).toBe(0);
  });
  test('what is exact is one value with certainty', () => {
    const turns = exact(2);
    expect(intervalOf(turns, 0.9)).toEqual({ low: 2, high: 2 });
    expect(quantileOf(turns, 0)).toBe(2);
    expect(cumulativeOf(turns, 1.999)).toBe(0);
    expect(cumulativeOf(turns, 2)).toBe(1);
  });
  test('nine tenths of a normal doubt lie within ±1.645 uncertainties (tables of the normal law, from memory)', () => {
    const { low, high } = intervalOf({ value: 0, uncertainty: 1, shape: 'normal', origin: 'measured' }, 0.9);
    // Printed to three decimals.
    expect(high).toBeCloseTo(1.645, 3);
    expect(low).toBeCloseTo(-high, 12);
  });
});

describe('what has no answer is refused', () => {
  for (const p of [-0.001, 1.001, Number.NaN]) {
    test(`${p} is no probability`, () => {
      expect(() => quantileOf(exact(1), p)).toThrow(Refusal);
      expect(() => intervalOf(exact(1), p)).toThrow(Refusal);
    });
  }
  test('a positive shape needs a positive value', () => {
    const odd: Quantity = { value: 0, uncertainty: 1, shape: 'positive', origin: 'assumed' };
    expect(() => quantileOf(odd, 0.5)).toThrow(Refusal);
    expect(() => cumulativeOf(odd, 1)).toThrow(Refusal);
  });
});
