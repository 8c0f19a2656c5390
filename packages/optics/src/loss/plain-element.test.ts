import { expect, test } from 'vitest';
import { OutOfRange } from '../out-of-range.ts';
import { straightTransmission, transmissionWithGhosts } from './plain-element.ts';

/** Adds surfaces one by one, each time summing the geometric series of bounces between the pile and the new surface. */
function pile(reflectance: number, count: number): number {
  let transmission = 1;
  for (let i = 0; i < count; i++) {
    const back = 1 - transmission;
    transmission = (transmission * (1 - reflectance)) / (1 - back * reflectance);
  }
  return transmission;
}

test('a pile of surfaces built up one by one passes what the formula says', () => {
  for (const reflectance of [0, 0.035, 0.3, 0.9]) {
    for (const count of [0, 1, 2, 3, 4, 8]) {
      expect(transmissionWithGhosts(reflectance, count)).toBeCloseTo(pile(reflectance, count), 13);
    }
  }
});

test('ghosts only add, and not with fewer than two surfaces', () => {
  expect(transmissionWithGhosts(0.05, 1)).toBeCloseTo(straightTransmission(0.05, 1), 15);
  expect(transmissionWithGhosts(0.05, 2)).toBeGreaterThan(straightTransmission(0.05, 2));
  expect(straightTransmission(0.05, 0)).toBe(1);
  expect(transmissionWithGhosts(1, 0)).toBe(1);
});

test('half a surface and a reflectance of more than all are refused', () => {
  expect(() => straightTransmission(0.04, 1.5)).toThrow(OutOfRange);
  expect(() => straightTransmission(0.04, -1)).toThrow(OutOfRange);
  expect(() => straightTransmission(1.0000001, 2)).toThrow(OutOfRange);
  expect(() => transmissionWithGhosts(-1e-9, 2)).toThrow(OutOfRange);
});
