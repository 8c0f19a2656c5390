import { expect, test } from 'vitest';
import { rangeRemarks } from './remarks-range.ts';
import type { Told } from './told.ts';

const told = (guided: number, low: number, high: number) =>
  rangeRemarks({
    coupling: {
      guided,
      guidedInterval: { low, high },
      fundamental: guided,
      fundamentalInterval: { low, high },
    },
  } as Told);

// a tenth of the range's width is let pass: our choice, as the function says
test('a share outside its own range is told on the side where it stands', () => {
  expect(told(0.8, 0.5, 0.7).map(({ id, text }) => [id, text])).toEqual([
    [
      'above-its-range',
      expect.stringMatching(/guided share, 80 %, stands above its own range.* takes some away/u),
    ],
  ]);
  expect(told(0.4, 0.5, 0.7).map(({ id, text }) => [id, text])).toEqual([
    ['below-its-range', expect.stringMatching(/guided share, 40 %, stands below its own range.* adds some/u)],
  ]);
});

test('a share within its range, or hardly outside, needs no word', () => {
  for (const share of [0.49, 0.5, 0.6, 0.7, 0.71]) expect(told(share, 0.5, 0.7)).toEqual([]);
});
