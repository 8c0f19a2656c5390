import { expect, test } from 'vitest';
import { Refusal, type RefusalParts } from '../refusal.ts';
import { documentLimits } from './document-limits.ts';
import { readTree } from './yaml-tree.ts';

/** Everything refused in a text, and how much work that was in ms: other work on the machine does not count. */
function refused(text: string): { parts: readonly RefusalParts[]; took: number } {
  const started = process.cpuUsage();
  try {
    readTree(text, 'x.yaml');
  } catch (error) {
    if (error instanceof Refusal) return { parts: error.parts, took: process.cpuUsage(started).user / 1e3 };
    throw error;
  }
  throw new Error('this was read');
}

const kilobyte = 1024;

test('every value is text, with the place at which it is written', () => {
  const tree = readTree('a: 0x10\nb: [ yes, 1e3 ]\nc: { d: null }\n', 'x.yaml');
  expect(tree).toEqual({
    kind: 'map',
    at: { line: 1, column: 1 },
    entries: [
      {
        key: 'a',
        at: { line: 1, column: 1 },
        value: { kind: 'text', at: { line: 1, column: 4 }, text: '0x10' },
      },
      {
        key: 'b',
        at: { line: 2, column: 1 },
        value: {
          kind: 'list',
          at: { line: 2, column: 4 },
          items: [
            { kind: 'text', at: { line: 2, column: 6 }, text: 'yes' },
            { kind: 'text', at: { line: 2, column: 11 }, text: '1e3' },
          ],
        },
      },
      {
        key: 'c',
        at: { line: 3, column: 1 },
        value: {
          kind: 'map',
          at: { line: 3, column: 4 },
          entries: [
            { key: 'd', at: { line: 3, column: 6 }, value: { kind: 'nothing', at: { line: 3, column: 9 } } },
          ],
        },
      },
    ],
  });
});

test('JSON is read like any other YAML', () => {
  expect(readTree('{"a": "1 mm", "b": [2]}', 'x.json')).toMatchObject({
    entries: [
      { key: 'a', value: { text: '1 mm' } },
      { key: 'b', value: { items: [{ text: '2' }] } },
    ],
  });
});

test('lines may end in CR alone, as in CR LF or LF, and keep their numbers', () => {
  const lines = ['a: 1 mm', 'b:', '  c: 2'];
  const [lf, crlf, cr] = ['\n', '\r\n', '\r'].map((end) => readTree(lines.join(end), 'x.yaml'));
  expect(crlf).toEqual(lf);
  expect(cr).toEqual(lf);
  expect(refused('a: 1\ra: 2').parts).toMatchObject([{ where: 'x.yaml:2:1' }]);
});

test('an alias stands for what it names, at the place where it is written', () => {
  expect(readTree('a: &m { b: 1 }\nc: *m\n', 'x.yaml')).toMatchObject({
    entries: [{}, { key: 'c', value: { at: { line: 2 }, entries: [{ key: 'b', value: { text: '1' } }] } }],
  });
});

const notYaml: readonly (readonly [name: string, text: string, where: string, what: RegExp])[] = [
  ['a tab before a key', 'a:\n\tb: 1', 'x.yaml:2:1', /Tabs/],
  // told where it opens: the parser itself points to the line that it takes for a part of it
  ['a bracket never closed', 'a: [1, 2\nb: 3', 'x.yaml:1:4', /bracket `\[`/],
  [
    'a brace never closed, lines before',
    'a: { b: 1, c: { d: 2 }\n\ne: { f: 3 }',
    'x.yaml:1:4',
    /bracket `\{`/,
  ],
  ['a bracket closed by another', 'a: 1\nb: { c: [1 }\n', 'x.yaml:2:9', /bracket `\[`/],
  [
    'an open bracket after some that are text',
    'a: x [y {\nb: "{"\nc: [1 # ]\n',
    'x.yaml:3:4',
    /bracket `\[`/,
  ],
  ['an open bracket after quotes', "a: 'it''s ['\nb: \"\\\"[\"\nc: {\n", 'x.yaml:3:4', /bracket `\{`/],
  ['two keys on one line', 'a: b: c', 'x.yaml:1:4', /Nested mappings/],
  ['a second document', 'a: 1\n---\nb: 2', 'x.yaml:2:1', /second document/],
  ['a key twice', 'a: 1\na: 2', 'x.yaml:2:1', /`a` stands twice/],
  ['a merge key', 'a: &m { b: 1 }\nc: { <<: *m }', 'x.yaml:2:6', /`<<` merges nothing/],
  ['a tag', 'a: !!float 1', 'x.yaml:1:12', /tag/],
  ['a tag of its own', 'a: !ruby/object:X 1', 'x.yaml:1:19', /tag/],
  ['an alias of nothing', 'a: *nowhere', 'x.yaml:1:4', /`&nowhere`/],
  ['an alias of itself', 'a: &m [*m]', 'x.yaml:1:8', /unfold/],
  ['a list as a key', '? [a, b]\n: 1', 'x.yaml:1:3', /key must be a word/],
  ['a zero byte', 'a: 1\nb: \u0000', 'x.yaml:2:4', /U\+0000/],
  ['an escape sequence', 'name: \u001b[31mred', 'x.yaml:1:7', /U\+001B/],
  ['bytes that were no UTF-8', 'a: 8.2 \ufffdm', 'x.yaml:1:8', /U\+FFFD/],
  ['half a surrogate pair', 'a: \ud800', 'x.yaml:1:4', /U\+D800/],
];

for (const [name, text, where, what] of notYaml) {
  test(`${name} is refused where it stands`, () => {
    const { parts } = refused(text);
    expect(parts[0]?.where).toBe(where);
    expect(parts[0]?.what).toMatch(what);
    expect(parts[0]?.mend).toMatch(/^[A-Z].*\.$/);
  });
}

test('one slip on a line is refused once, whatever the parser makes of the rest of the line', () => {
  expect(refused('a: 1\nb:\n\tc: 2\n  d: 3').parts.map(({ where }) => where)).toEqual(['x.yaml:3:1']);
});

// YAML 1.2.2, 5.5 and 6.1: white space is the space and the tab, indentation the space alone
test('spaces of other kinds are refused where they stand', () => {
  expect(refused('a:\n\u00a0\u00a0b: 1\n  c: 2').parts).toMatchObject([
    { where: 'x.yaml:2:1', what: expect.stringContaining('U+00A0') },
  ]);
  expect(refused('a:\n  b:\u30005 mm\n  c: 2').parts).toMatchObject([
    { where: 'x.yaml:2:5', what: expect.stringContaining('U+3000') },
  ]);
});

test('an open bracket is refused once, after what is wrong before it', () => {
  expect(refused('a: { b: 1\nc: { d: 2 }\ne: { f: 3 }\n').parts).toHaveLength(1);
  expect(refused('a:\n\tb: 1\nc: [1\nd: 2\n').parts.map(({ where }) => where)).toEqual([
    'x.yaml:2:1',
    'x.yaml:3:4',
  ]);
});

// Ten levels of ten aliases each: ten thousand million entries if they were filled in.
const bomb = Array.from({ length: 10 }, (_, level) =>
  level === 0 ? 'a0: &a0 [x]' : `a${level}: &a${level} [${`*a${level - 1}, `.repeat(9)}*a${level - 1}]`,
).join('\n');

/** Texts that would hold a careless reader up, or end its process. */
const hostile: readonly (readonly [name: string, text: string])[] = [
  ['aliases that unfold to ten thousand million entries', bomb],
  ['brackets within brackets', '['.repeat(200 * kilobyte)],
  ['braces within braces', '{"a":'.repeat(40 * kilobyte)],
  ['lists opened on one line', '- '.repeat(100 * kilobyte)],
  ['keys opened on one line', '? '.repeat(100 * kilobyte)],
  ['nothing but colons', ': '.repeat(100 * kilobyte)],
  ['nothing but commas in a bracket', `[${','.repeat(200 * kilobyte)}`],
  ['indentation without end', Array.from({ length: 600 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n')],
  ['nothing but quotes', '"'.repeat(200 * kilobyte)],
  ['nothing but anchors', '&a '.repeat(60 * kilobyte)],
  ['one megabyte', 'a: 1\n'.repeat(200 * kilobyte)],
  ['100 MB', 'x'.repeat(100 * kilobyte * kilobyte)],
];

for (const [name, text] of hostile) {
  test(`${name}: refused, and soon`, () => {
    const { parts, took } = refused(text);
    expect(parts.length).toBeGreaterThan(0);
    // About 300 ms at most on the machine this was written on; a slow one may take ten times that.
    expect(took).toBeLessThan(3000);
  });
}

test('a text of the largest size that is still read is read', () => {
  const line = `${'a'.repeat(98)}\n`;
  const head = 'note: |\n';
  const lines = Math.floor((documentLimits.characters - head.length) / (line.length + 1));
  expect(readTree(head + ` ${line}`.repeat(lines), 'x.yaml').kind).toBe('map');
});

test('one character more than the largest size is refused', () => {
  const { parts } = refused('#'.repeat(documentLimits.characters + 1));
  expect(parts[0]?.what).toContain('more than the 256 kB');
});

test('brackets 16 deep are read, 17 deep are refused', () => {
  const nested = (depth: number): string => `a: ${'['.repeat(depth)}${']'.repeat(depth)}`;
  expect(readTree(nested(documentLimits.depth - 1), 'x.yaml').kind).toBe('map');
  expect(refused(nested(documentLimits.depth + 1)).parts).toHaveLength(1);
});
