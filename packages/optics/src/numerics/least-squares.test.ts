import { expect, test } from 'vitest';
import { compressed, leastSquares, orthonormal } from './least-squares.ts';
import { levenbergMarquardt, usualFitLimits } from './levenberg-marquardt.ts';
import { median, medianDeviation } from './median.ts';
import { studentProbability, studentQuantile } from './student.ts';

/** Within a share of the larger of the expected size and `floor`. */
const near = (found: number, expected: number, share: number, floor = 0): void =>
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(share * Math.max(Math.abs(expected), floor));

test('a straight line through the readings of a thermometer, as computed by hand (from memory: JCGM 100:2008, H.3)', () => {
  // Table H.6: readings t and corrections b of a thermometer; the line is taken about 20 °C.
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const line = leastSquares([t.map(() => 1), t.map((x) => x - 20)], b)!;
  const variance = line.squares / (t.length - 2);
  // as printed there: y1 = −0.1712, s = 0.0029; y2 = 0.00218, s = 0.00067; half a unit in the last place
  expect(Math.abs(line.coefficients[0]! + 0.1712)).toBeLessThan(5e-5);
  expect(Math.abs(line.coefficients[1]! - 0.00218)).toBeLessThan(5e-6);
  expect(Math.abs(Math.sqrt(variance * line.inverse[0]![0]!) - 0.0029)).toBeLessThan(5e-5);
  expect(Math.abs(Math.sqrt(variance * line.inverse[1]![1]!) - 0.00067)).toBeLessThan(5e-6);
});

test('a parabola far from its origin is found to rounding', () => {
  const x = [1000, 1001, 1002, 1003, 1004];
  const found = leastSquares(
    [x.map(() => 1), x, x.map((v) => v * v)],
    x.map((v) => 3 + 2 * v - 0.5 * v * v),
  )!;
  // values of 5e5 with 1e-16 of rounding, times the condition of such columns, about 1e9
  near(found.coefficients[2]!, -0.5, 1e-6);
});

test('columns that say the same are refused', () => {
  expect(
    leastSquares(
      [
        [1, 2, 3],
        [2, 4, 6],
      ],
      [1, 2, 3],
    ),
  ).toBeNull();
});

test('long columns and their triangle tell the same of any coefficients, but for a constant', () => {
  const columns = [
    [1, 1, 1, 1, 1],
    [0, 1, 2, 3, 5],
    [0, 0, 0, 0, 0],
    [2, 3, 4, 5, 7],
  ];
  const values = [1, -2, 4, 0.5, 3];
  const short = compressed(columns, values);
  const left = (
    of: { columns: readonly (readonly number[])[]; values: readonly number[] },
    c: readonly number[],
  ) =>
    of.values.reduce(
      (sum, v, i) => sum + (v - c.reduce((all, x, j) => all + x * of.columns[j]![i]!, 0)) ** 2,
      0,
    );
  const long = { columns, values };
  const constant = left(long, [0, 0, 0, 0]) - left(short, [0, 0, 0, 0]);
  expect(short.values).toHaveLength(4);
  for (const c of [
    [1, 2, 3, 4],
    [-0.3, 7, 0, 0.1],
    [2, -1, 9, -3],
  ])
    near(left(long, c) - left(short, c), constant, 1e-13, left(long, c));
});

test('orthonormal columns leave out what says the same', () => {
  const directions = orthonormal([
    [3, 0, 4],
    [6, 0, 8],
    [1, 1, 1],
  ]);
  expect(directions).toHaveLength(2);
  const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, x, i) => sum + x * b[i]!, 0);
  near(dot(directions[0]!, directions[0]!), 1, 1e-15);
  near(dot(directions[1]!, directions[1]!), 1, 1e-15);
  near(dot(directions[0]!, directions[1]!), 0, 1e-15, 1);
});

test('Student’s law at 95 % (tables of t, as in JCGM 100:2008, table G.2, from memory)', () => {
  const rows: readonly [number, number][] = [
    [1, 6.31],
    [2, 2.92],
    [3, 2.35],
    [4, 2.13],
    [5, 2.02],
    [6, 1.94],
    [7, 1.89],
    [8, 1.86],
    [9, 1.83],
    [10, 1.81],
    [15, 1.75],
    [20, 1.72],
    [30, 1.7],
    [50, 1.68],
    [Number.POSITIVE_INFINITY, 1.645],
  ];
  // printed to 0.01, and the expansion's own 0.002
  for (const [freedom, t] of rows) expect(Math.abs(studentQuantile(0.95, freedom) - t)).toBeLessThan(0.0065);
  expect(() => studentQuantile(0.95, 0.9)).toThrow();
});

test('Student’s law below its own 95 % points (computed with SciPy 1.17, stats.t.ppf)', () => {
  const rows: readonly [number, number][] = [
    [1, 6.3138],
    [2, 2.92],
    [3, 2.3534],
    [4, 2.1318],
    [5, 2.015],
    [10, 1.8125],
    [15, 1.7531],
    [120, 1.6577],
    [Number.POSITIVE_INFINITY, 1.6449],
  ];
  // rounding to four places moves the probability by 5e-6 at the most
  for (const [freedom, t] of rows) near(studentProbability(t, freedom), 0.95, 6e-6);
  near(studentProbability(-2.015, 5), 0.05, 1e-4);
  expect(() => studentProbability(1, 0.5)).toThrow();
});

test('a damped fit finds Misra’s constants from far away (NIST Statistical Reference Datasets, Misra1a, from memory)', () => {
  const y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
  const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760];
  const residuals = ([b1, b2]: readonly number[]) => y.map((v, i) => v - b1! * (1 - Math.exp(-b2! * x[i]!)));
  const fit = levenbergMarquardt(residuals, [500, 1e-4], [100, 1e-4]);
  const sigma2 = fit.squares / (x.length - 2);
  // certified: 238.94212918 and 5.5015643181e-4, standard deviations 2.7070075241 and 7.2668688436e-6
  near(fit.parameters[0]!, 238.94212918, 1e-7);
  near(fit.parameters[1]!, 5.5015643181e-4, 1e-7);
  // slopes are differences, good to a millionth
  near(Math.sqrt(sigma2 * fit.inverse![0]![0]!), 2.7070075241, 1e-5);
  near(Math.sqrt(sigma2 * fit.inverse![1]![1]!), 7.2668688436e-6, 1e-5);
  expect(['settled', 'no better']).toContain(fit.end);
});

test('exact slopes lead to the same constants, and to their certified deviations (Misra1a again)', () => {
  const y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
  const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760];
  const residuals = ([b1, b2]: readonly number[]) => y.map((v, i) => v - b1! * (1 - Math.exp(-b2! * x[i]!)));
  const slopesOf = ([b1, b2]: readonly number[]) => [
    x.map((v) => Math.exp(-b2! * v) - 1),
    x.map((v) => -b1! * v * Math.exp(-b2! * v)),
  ];
  const fit = levenbergMarquardt(residuals, [500, 1e-4], [100, 1e-4], usualFitLimits, slopesOf);
  const sigma2 = fit.squares / (x.length - 2);
  near(fit.parameters[0]!, 238.94212918, 1e-9);
  near(Math.sqrt(sigma2 * fit.inverse![0]![0]!), 2.7070075241, 1e-8);
  near(Math.sqrt(sigma2 * fit.inverse![1]![1]!), 7.2668688436e-6, 1e-8);
});

test('a parameter that nothing depends on is left undecided', () => {
  const fit = levenbergMarquardt(([a]) => [a! - 1, a! - 3, a! - 2], [0, 5], [1, 1]);
  expect(fit.end).toBe('undecided');
  near(fit.parameters[0]!, 2, 1e-8);
});

test('a median is not moved by a stray, and the scatter about it is that of a bell', () => {
  expect(median([5, 1, 1e9, 2, 3])).toBe(3);
  expect(median([4, 1, 3, 2])).toBe(2.5);
  // quarter points of a normal law lie 0.6745 deviations out
  near(medianDeviation([-2, -0.6745, 0, 0.6745, 90]), 1, 1e-4);
});
