import { expect, test } from 'vitest';
import { latest, readingsOfBuckets, withRecent } from './recent-readings.ts';

const at = (t: number, value: number | null = t) => ({ t, value, saturated: false });

test('a bucket is its reading, its mean, or a gap, and a gap stands behind what was read', () => {
  const bucket = { count: 2, min: 1, max: 3, mean: 2, gap: false, saturated: true };
  expect(
    readingsOfBuckets([
      { ...bucket, t: 10 },
      { ...bucket, t: 20, gap: true, saturated: false },
      { t: 30, count: 0, min: null, max: null, mean: null, gap: true, saturated: false },
    ]),
  ).toEqual([
    { t: 10, value: 2, saturated: true },
    { t: 20, value: 2, saturated: false },
    { t: 20, value: null, saturated: false },
    { t: 30, value: null, saturated: false },
  ]);
});

test('what lies further back than the window is let go, its border stays', () => {
  expect(withRecent([at(0), at(50), at(100)], [at(150)], 100)).toEqual([at(50), at(100), at(150)]);
  expect(withRecent([at(0)], [], 100)).toEqual([at(0)]);
  expect(withRecent([], [], 100)).toEqual([]);
});

test('of the last minute those of that minute are told, however long readings are held', () => {
  const held = [at(0), at(40_000), at(100_000), at(110_000, null)];
  expect(latest(held, 60_000)).toEqual([at(100_000), at(110_000, null)]);
  expect(latest(held, 70_000)).toEqual([at(40_000), at(100_000), at(110_000, null)]);
  expect(latest([], 60_000)).toEqual([]);
});

test('of an instrument that floods, the newest are held', () => {
  const many = Array.from({ length: 20_005 }, (_, index) => at(index / 1000));
  const held = withRecent([], many, 60_000);
  expect(held).toHaveLength(20_000);
  expect(held[0]).toEqual(at(0.005));
});
