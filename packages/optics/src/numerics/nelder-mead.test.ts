import { expect, test } from 'vitest';
import { OutOfRange } from '../out-of-range.ts';
import { nelderMead } from './nelder-mead.ts';

test('finds the bottom of the curved valley', () => {
  // H. H. Rosenbrock, Comput. J. 3, 175 (1960) (from memory): minimum 0 at (1, 1), usual start (−1.2, 1)
  const end = nelderMead(([x, y]) => 100 * (y! - x! * x!) ** 2 + (1 - x!) ** 2, [-1.2, 1], [0.5, 0.5]);
  expect(end.reason).toBe('converged');
  expect(end.point[0]).toBeCloseTo(1, 6); // the tolerance asked: 1e-7 of a step, along a valley 50 times longer than wide
  expect(end.point[1]).toBeCloseTo(1, 6);
});

test('coordinates of very different size are found alike', () => {
  const end = nelderMead(([x, y]) => ((x! - 2e-6) / 1e-6) ** 2 + (y! - 3) ** 2, [0, 0], [1e-6, 1]);
  expect(end.point[0]! * 1e6).toBeCloseTo(2, 6);
  expect(end.point[1]).toBeCloseTo(3, 6);
});

test('one coordinate alone and eight together', () => {
  expect(nelderMead(([x]) => Math.cos(x!), [2], [0.5]).point[0]).toBeCloseTo(Math.PI, 6);
  const start = [0, 0, 0, 0, 0, 0, 0, 0];
  const end = nelderMead(
    (p) => p.reduce((sum, x, i) => sum + (i + 1) * (x - i) ** 2, 5),
    start,
    start.map(() => 1),
  );
  expect(end.value).toBeCloseTo(5, 10);
});

test('says so when the evaluations ran out', () => {
  const end = nelderMead(([x]) => x!, [0], [1], { evaluations: 50 });
  expect(end.reason).toBe('evaluations spent');
  expect(end.evaluations).toBeLessThan(60);
});

test('walls of not-a-number are avoided', () => {
  const end = nelderMead(([x]) => (x! < 0.5 ? Number.NaN : x! * x!), [2], [1]);
  expect(end.point[0]).toBeCloseTo(0.5, 5);
});

test('a start off the map and a step of 0 are refused', () => {
  expect(() => nelderMead(() => Number.NaN, [0], [1])).toThrow(OutOfRange);
  expect(() => nelderMead(([x]) => x!, [0], [0])).toThrow(OutOfRange);
  expect(() => nelderMead(([x]) => x!, [0], [1, 1])).toThrow(OutOfRange);
});
