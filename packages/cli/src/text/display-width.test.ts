import { expect, test } from 'vitest';
import { displayWidth, splitAt } from './display-width.ts';

/** East_Asian_Width W or F is two columns; combining marks and format characters none. */
const widths = {
  source: 'Unicode character database',
  obtained: "computed with Python 3.11's unicodedata: east_asian_width and category",
  rows: [
    ['a', 1],
    ['µ', 1],
    ['±', 1],
    ['−', 1],
    ['°', 1],
    ['━', 1],
    ['é', 1],
    ['e\u0301', 1], // category Mn
    ['日', 2],
    ['ｱ', 1], // half-width
    ['Ａ', 2], // full-width
    ['한', 2],
    ['\u200b', 0], // category Cf
  ],
} as const;

for (const [text, columns] of widths.rows) {
  test(`"${text}" takes ${columns} columns`, () => expect(displayWidth(text), widths.source).toBe(columns));
}

test('a text is cut between characters, never inside one', () => {
  expect(splitAt('日本語', 3)).toEqual(['日', '本語']);
  expect(splitAt('e\u0301e\u0301', 1)).toEqual(['e\u0301', 'e\u0301']);
});

test('a character wider than the line is taken all the same, so that cutting ends', () => {
  expect(splitAt('日本', 1)).toEqual(['日', '本']);
});
