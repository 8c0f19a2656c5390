import { expect, test } from 'vitest';
import { OutOfRange } from '../out-of-range.ts';
import { sobolPoints } from './sobol.ts';

// Source: SciPy 1.17, scipy.stats.qmc.Sobol(64, scramble=False, bits=32), run once.
const scipy = [
  { point: 1, dimension: 0, value: 0.5 },
  { point: 5, dimension: 2, value: 0.125 },
  { point: 77, dimension: 12, value: 0.4921875 },
  { point: 100, dimension: 33, value: 0.2578125 },
  { point: 1000, dimension: 63, value: 0.4462890625 },
  { point: 1023, dimension: 40, value: 0.6318359375 },
  { point: 4095, dimension: 7, value: 0.390869140625 },
  { point: 4095, dimension: 63, value: 0.553466796875 },
  { point: 2222, dimension: 50, value: 0.520263671875 },
  { point: 3333, dimension: 21, value: 0.649169921875 },
] as const;

test('unshifted points are those of SciPy, moved half a step off zero', () => {
  const points = sobolPoints(4096, 64, null);
  for (const { point, dimension, value } of scipy) {
    expect(points[point * 64 + dimension], `${point}, ${dimension}`).toBe(value + 2 ** -33);
  }
});

test('every dimension of 2^k shifted points has one in each of 2^k equal slices', () => {
  const points = sobolPoints(256, 64, 99);
  for (let dimension = 0; dimension < 64; dimension++) {
    const slices = new Set(
      Array.from({ length: 256 }, (_, i) => Math.floor(points[i * 64 + dimension]! * 256)),
    );
    expect(slices.size).toBe(256);
  }
});

test('they integrate a smooth function far better than chance', () => {
  const count = 4096;
  const points = sobolPoints(count, 6, 3);
  let sum = 0;
  for (let i = 0; i < count; i++) {
    let product = 1;
    for (let d = 0; d < 6; d++) product *= 1 + (points[i * 6 + d]! - 0.5) / (d + 1);
    sum += product;
  }
  // Exact mean 1. Chance would err about 0.35/√4096 ≈ 5e-3 (one deviation); a tenth of that is asked.
  expect(Math.abs(sum / count - 1)).toBeLessThan(5e-4);
});

test('the seed decides, and all numbers lie inside 0 … 1', () => {
  expect(sobolPoints(8, 3, 5)).toEqual(sobolPoints(8, 3, 5));
  expect(sobolPoints(8, 3, 6)).not.toEqual(sobolPoints(8, 3, 5));
  expect(sobolPoints(1024, 2, null).every((x) => x > 0 && x < 1)).toBe(true);
});

test('a 65th dimension and no points are refused', () => {
  expect(() => sobolPoints(8, 65, null)).toThrow(OutOfRange);
  expect(() => sobolPoints(0, 2, null)).toThrow(OutOfRange);
});
