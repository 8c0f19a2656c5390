import { expect, test } from 'vitest';
import { lineThrough } from './line.ts';
import { variancesOverKinds } from './scatter.ts';

const places = [0, 1, 2, 3, 4, 5];
/** Σ(x − mean)² of these, by hand: 2·(0.5² + 1.5² + 2.5²). */
const spread = 17.5;

test('readings rounded to one lie on a line by chance: the doubt is that of the digit, and is known', () => {
  const line = lineThrough(places, [0, 3, 6, 9, 12, 15], 10)!;
  expect(line.slope).toBeCloseTo(3, 12);
  // the step in which they were read is 1: JCGM 100:2008, F.2.2.1, step/√12 each (from memory), by hand over the spread
  expect(line.covariance[1]![1]!).toBeCloseTo(1 / 12 / spread, 12);
  expect(line.doubtFreedom).toBe(Number.POSITIVE_INFINITY);
});

test('of readings that scatter, the doubt is learnt from as many as there are to spare', () => {
  const line = lineThrough(places, [0.31, 2.72, 6.53, 8.61, 12.4, 14.8], 10)!;
  expect(line.doubtFreedom).toBe(4);
});

test('two readings have the stated doubt', () => {
  const line = lineThrough([0, 10], [0.31, 2.72], 0.5)!;
  // two readings ten apart: 2·5² = 50 of spread
  expect(line.covariance[1]![1]!).toBeCloseTo(0.5 ** 2 / 50, 12);
  expect(line.doubtFreedom).toBe(Number.POSITIVE_INFINITY);
});

test('of two kinds of scatter, one of them three times as likely, variances are the mean so weighted', () => {
  const kinds = [
    { weight: 3, variances: [1, 1] },
    { weight: 1, variances: [1, 9] },
  ];
  // by hand: (3·1 + 9)/4
  expect(variancesOverKinds({ rule: 'even', variances: [1, 1], kinds })).toEqual([1, 3]);
});
