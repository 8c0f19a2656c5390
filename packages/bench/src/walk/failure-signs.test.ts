import { expect, test } from 'vitest';
import { alwaysBelow, driftOf, isFlat, scatterOf, scatterOfPeaks } from './failure-signs.ts';

const below = (highest: readonly number[], by: number) => ({
  highest,
  standing: highest.map((ln) => ln - by),
});

test('peaks that fall four times running, by 7 % in all, are a drift; noise up and down is none', () => {
  // ln 0.93 = −0.0726: four peaks a third of it apart
  expect(driftOf([0, -0.024, -0.048, -0.0726])).toBeCloseTo(-0.0726, 12);
  expect(driftOf([0, 0.03, 0.05, 0.08])).toBeCloseTo(0.08, 12);
  expect(driftOf([0, -0.03, -0.06])).toBeNull();
  expect(driftOf([0, -0.03, -0.02, -0.08])).toBeNull();
  expect(driftOf([0, -0.01, -0.02, -0.03])).toBeNull();
});

test('what stands differs by its sample deviation, and three are the least that tell it', () => {
  // −0.1, 0, 0.1: deviation 0.1 with n − 1 in the denominator, the usual estimate (common practice, no source)
  expect(scatterOf({ highest: [], standing: [-0.1, 0, 0.1] })).toBeCloseTo(0.1, 12);
  expect(scatterOf({ highest: [], standing: [-0.1, 0.1] })).toBeNull();
  expect(scatterOf({ highest: [], standing: [0, 0.01, 0.02] })).toBeNull();
});

test('a meter that never comes near its peak in four tries is told apart from one that did once', () => {
  expect(alwaysBelow(below([0, 0, 0, 0], 0.05))).toBeCloseTo(0.05, 12);
  expect(alwaysBelow(below([0, 0, 0], 0.05))).toBeNull();
  expect(alwaysBelow({ highest: [0, 0, 0, 0], standing: [-0.05, -0.05, -0.02, -0.05] })).toBeNull();
});

test('a peak is flat when five steps of M1 leave it within 8 %', () => {
  expect(isFlat([0, 0.02, -0.03, 0.01, 0.03, 0])).toBe(true);
  expect(isFlat([0, 0.02, -0.03, 0.01, 0.03])).toBe(false);
  expect(isFlat([0, 0.02, -0.03, 0.01, 0.06, 0])).toBe(false);
});

test('peaks of several screws scatter by their pooled deviation; one of each tells nothing', () => {
  // (2·0.05² + 0.1²/2)/(2 + 1): sums of squares about each mean over their degrees of freedom (common practice, no source)
  const pooled = Math.sqrt((2 * 0.05 ** 2 + 0.1 ** 2 / 2) / 3);
  expect(scatterOfPeaks([[-0.05, 0, 0.05], [3, 3.1], [7]])).toBeCloseTo(pooled, 12);
  expect(scatterOfPeaks([[0], [0.3]])).toBeNull();
  // noise of 2 %, of which a highest reading has 0.7, and a drift between the screws
  expect(
    scatterOfPeaks([
      [0, 0.02],
      [0.3, 0.28, 0.31],
    ]),
  ).toBeNull();
});
