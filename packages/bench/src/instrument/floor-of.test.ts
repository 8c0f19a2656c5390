import { expect, test } from 'vitest';
import { floorOf } from './floor-of.ts';
import type { Reading } from './reading.ts';

const read = (value: number | null, saturated = false): Reading => ({ t: 0, value, saturated });

test('the floor is the mean of the last twenty readings, and of those since the last gap', () => {
  const many = [read(1e9), ...Array.from({ length: 20 }, (_, index) => read(index % 2))];
  expect(floorOf(many)).toEqual({ floor: 0.5, count: 20 });
  expect(floorOf([read(7), read(null), read(1), read(3)])).toEqual({ floor: 2, count: 2 });
});

test('there is none right behind a gap, without readings, or in light that is too much', () => {
  expect(floorOf([])).toBeNull();
  expect(floorOf([read(7), read(null)])).toBeNull();
  expect(floorOf([read(7), read(9, true)])).toBeNull();
});
