import fc from 'fast-check';
import { expect, test } from 'vitest';
import { displayWidth } from './display-width.ts';
import { wrap, wrapHanging } from './wrap.ts';

test('lines break between words', () => {
  expect(wrap('one two three', 7)).toEqual(['one two', 'three']);
  expect(wrap('one two three', 6)).toEqual(['one', 'two', 'three']);
});

test('a number stays with its unit, and a symbol with its number', () => {
  expect(wrap('the waist is 0.85 mm wide', 16)).toEqual(['the waist is', '0.85 mm wide']);
  expect(wrap('aperture of NA 0.13', 14)).toEqual(['aperture of', 'NA 0.13']);
});

test('what is longer than a line is cut', () => {
  expect(wrap('abcdefgh', 3)).toEqual(['abc', 'def', 'gh']);
  expect(wrap('1 2 3 4 5 6', 3)).toEqual(['1 2', '3 4', '5 6']);
});

test('lines that follow hang under the first', () => {
  expect(wrapHanging('one two three', '  1. ', 12)).toEqual(['  1. one two', '     three']);
});

test('no line is too wide, and no letter is lost', () => {
  const words = fc.array(fc.string({ unit: 'grapheme', maxLength: 12 }), { maxLength: 20 });
  fc.assert(
    fc.property(words, fc.integer({ min: 2, max: 30 }), (some, width) => {
      const text = some.join(' ');
      const lines = wrap(text, width);
      for (const line of lines) expect(displayWidth(line)).toBeLessThanOrEqual(width);
      expect(lines.join('').replace(/\s/gu, '')).toBe(text.replace(/\s/gu, ''));
    }),
  );
});
