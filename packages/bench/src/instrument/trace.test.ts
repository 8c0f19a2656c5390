import { expect, test } from 'vitest';
import { bucketsOfReadings, traceColumns, traceWords } from './trace.ts';

const bucket = { count: 4, min: 1e-3, max: 3e-3, mean: 2e-3, gap: false, saturated: false };

test('a gap breaks the line behind what was read before it, and light that is too much is marked', () => {
  const drawn = traceColumns([
    { ...bucket, t: 10, gap: true },
    { ...bucket, t: 20, saturated: true },
    { t: 30, count: 0, min: null, max: null, mean: null, gap: true, saturated: false },
  ]);
  expect(drawn).toEqual({
    times: [10, 10, 20, 30],
    low: [1e-3, null, 1e-3, null],
    high: [3e-3, null, 3e-3, null],
    middle: [2e-3, null, 2e-3, null],
    full: [null, null, 3e-3, null],
  });
});

test('a trace is told in words', () => {
  expect(traceWords([], 'W')).toBe('No readings in this time.');
  expect(
    traceWords([{ t: 0, count: 0, min: null, max: null, mean: null, gap: true, saturated: false }], 'W'),
  ).toBe('Nothing but a gap in this time.');
  const all = [
    { ...bucket, t: 0, count: 999_996 },
    { ...bucket, t: 1, gap: true, saturated: true },
  ];
  expect(traceWords(all, 'W')).toBe(
    '1 000 000 readings, lowest 1.000 mW, mean 2.000 mW, highest 3.000 mW; a gap; at its upper end in one place.',
  );
});

test('readings as they come are drawn as they are', () => {
  const drawn = traceColumns(
    bucketsOfReadings([
      { t: 1, value: 5, saturated: false },
      { t: 2, value: null, saturated: false },
      { t: 3, value: 6, saturated: true },
    ]),
  );
  expect(drawn.middle).toEqual([5, null, 6]);
  expect(drawn.full).toEqual([null, null, 6]);
});
