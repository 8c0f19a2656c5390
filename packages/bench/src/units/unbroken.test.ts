import { expect, test } from 'vitest';
import { dimensions } from './dimension.ts';
import { unbroken } from './unbroken.ts';
import { writeValue } from './write.ts';

test('no line breaks between a value and its unit, whatever its dimension and size', () => {
  for (const dimension of dimensions) {
    for (const size of [1e-12, 1e-9, 1e-6, 1e-3, 0.5, 2, 300, 1e4]) {
      expect(unbroken(`(${writeValue(size, dimension)}).`)).not.toMatch(/\d /u);
    }
  }
});

test('words keep their gaps, and so do numbers before words that begin like a unit', () => {
  expect(unbroken('between 4 mirrors and 2 watches, 7 LP modes')).toBe(
    'between 4 mirrors and 2 watches, 7 LP modes',
  );
  expect(unbroken('What costs most: focus (0.40 dB, all in all), 5.7 to 8.4 mW')).toBe(
    'What costs most: focus (0.40\u00a0dB, all in all), 5.7 to 8.4\u00a0mW',
  );
});

test('a value stays with its doubt', () => {
  expect(unbroken('0.84 mm ± 0.05 mm')).toBe('0.84\u00a0mm\u00a0±\u00a00.05\u00a0mm');
});
