import { normalFrom, seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import { currentReading } from './current-reading.ts';
import type { Reading } from './reading.ts';

const reading = (t: number, value: number | null, saturated = false): Reading => ({ t, value, saturated });

test('the mean of the last second, and what its readings leave of doubt: σ/√n', () => {
  const random = seededUniform(5);
  const readings = Array.from({ length: 400 }, (_, i) => reading(i * 50, 2 + 0.01 * normalFrom(random)));
  const now = currentReading(readings)!;
  expect(now.count).toBe(20);
  // a mean of 20 readings that scatter by 0.01 is off by 0.0022; four of those
  expect(Math.abs(now.value - 2)).toBeLessThan(4 * 0.0022);
  // the scatter is learnt from some sixty steps: good to a sixth
  expect(now.uncertainty! / (0.01 / Math.sqrt(20))).toBeGreaterThan(0.6);
  expect(now.uncertainty! / (0.01 / Math.sqrt(20))).toBeLessThan(1.5);
});

test('a slow meter gives its last reading alone, and what was before a gap says nothing', () => {
  expect(currentReading([reading(0, 1), reading(5000, 3)])).toEqual({
    value: 3,
    uncertainty: null,
    count: 1,
    saturated: false,
  });
  expect(currentReading([reading(0, 1), reading(10, null)])).toBeNull();
  expect(currentReading([])).toBeNull();
  expect(currentReading([reading(0, 1), reading(10, null), reading(20, 4, true)])).toMatchObject({
    value: 4,
    saturated: true,
  });
});
