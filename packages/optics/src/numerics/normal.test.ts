import { expect, test } from 'vitest';
import reference from '../../reference/normal.json' with { type: 'json' };
import { OutOfRange } from '../out-of-range.ts';
import { erfc, normalCdf, normalQuantile } from './normal.ts';

type Row = readonly [number, number];
const rows = (list: readonly number[][]) => list as unknown as readonly Row[];

// Source of all three: mpmath at 40 digits, packages/optics/reference/normal.json.

test('erfc agrees with mpmath', () => {
  for (const [x, value] of rows(reference.erfc)) {
    expect(Math.abs(erfc(x) / value - 1), `x = ${x}`).toBeLessThan(1e-14); // 30 terms of a series
  }
});

test('the normal distribution agrees with mpmath far into its tail', () => {
  for (const [z, value] of rows(reference.cdf)) {
    // rounding z/√2 once costs z² roundings of the result, for its logarithm is about −z²/2
    expect(Math.abs(normalCdf(z) / value - 1), `z = ${z}`).toBeLessThan(2e-16 * (2 + z * z) + 1e-15);
  }
  // far out, where e^(−x²) underflows, there is nothing or all
  for (const z of [40, 1e3, 1e7, 1e150, 1e308]) expect([normalCdf(-z), normalCdf(z)]).toEqual([0, 1]);
  expect(normalCdf(Number.NEGATIVE_INFINITY)).toBe(0);
  expect(normalCdf(Number.POSITIVE_INFINITY)).toBe(1);
});

test('quantiles agree with mpmath', () => {
  for (const [probability, z] of rows(reference.quantile)) {
    expect(Math.abs(normalQuantile(probability) - z), `p = ${probability}`).toBeLessThan(
      1e-13 * Math.max(1, Math.abs(z)),
    );
  }
});

// Source: the usual table (common knowledge, e.g. JCGM 100:2008 table G.1, from memory): 95 % within ±1.960, 90 % within ±1.645.
test('the printed two-sided limits', () => {
  expect(normalQuantile(0.975)).toBeCloseTo(1.96, 2);
  expect(normalQuantile(0.95)).toBeCloseTo(1.645, 3);
});

test('certain and impossible lie at infinity; what is no probability is refused', () => {
  expect(normalQuantile(0)).toBe(Number.NEGATIVE_INFINITY);
  expect(normalQuantile(1)).toBe(Number.POSITIVE_INFINITY);
  expect(() => normalQuantile(-1e-9)).toThrow(OutOfRange);
  expect(() => normalQuantile(1.0000001)).toThrow(OutOfRange);
  expect(() => normalQuantile(Number.NaN)).toThrow(OutOfRange);
});
