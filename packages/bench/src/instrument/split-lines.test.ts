import fc from 'fast-check';
import { expect, test } from 'vitest';
import { longestLine, noLine, splitLines, type UnfinishedLine } from './split-lines.ts';

/** All of it, piece by piece. */
function all(pieces: readonly string[]): {
  readonly lines: readonly string[];
  readonly rest: UnfinishedLine;
} {
  let rest = noLine;
  const lines = pieces.flatMap((piece) => {
    const split = splitLines(rest, piece);
    rest = split.rest;
    return split.lines;
  });
  return { lines, rest };
}

test('half a line waits for its other half', () => {
  expect(all(['1.2', '3\r', '\n4.5\n', '6'])).toEqual({
    lines: ['1.23', '4.5'],
    rest: { text: '6', tooLong: false },
  });
});

const text = fc
  .array(fc.oneof(fc.constantFrom('\n', '\r\n', '\r', 'a', '1.5'), fc.string({ maxLength: 20 })))
  .map((parts) => parts.join(''));

test('however a text is cut into pieces, its lines are the same', () => {
  fc.assert(
    fc.property(text, fc.array(fc.nat(400), { maxLength: 10 }), (whole, cuts) => {
      const places = [
        0,
        ...cuts.map((cut) => Math.min(cut, whole.length)).sort((a, b) => a - b),
        whole.length,
      ];
      const pieces = places.slice(1).map((to, index) => whole.slice(places[index], to));
      // another route: the whole of it at once, by the platform's own `split`
      const expected = whole.split(/[\r\n]/u);
      const rest = expected.pop() ?? '';
      expect(all(pieces)).toEqual({
        lines: expected.filter((line) => line !== ''),
        rest: { text: rest, tooLong: false },
      });
    }),
  );
});

test('ten megabytes without an end are let go of, and the line after them is heard', () => {
  const piece = 'x'.repeat(65_536);
  let rest = noLine;
  for (let sent = 0; sent < 10e6; sent += piece.length) {
    const split = splitLines(rest, piece);
    expect(split.lines).toEqual([]);
    rest = split.rest;
    expect(rest.text.length).toBeLessThanOrEqual(longestLine);
  }
  expect(splitLines(rest, 'x\n1.5\n').lines).toEqual(['1.5']);
});

test('the longest line is taken and one longer is not', () => {
  expect(splitLines(noLine, `${'y'.repeat(longestLine)}\n`).lines).toHaveLength(1);
  expect(splitLines(noLine, `${'y'.repeat(longestLine + 1)}\n`).lines).toHaveLength(0);
});
