import { expect, test } from 'vitest';
import { Refusal, type RefusalParts } from '../refusal.ts';
import { readDrawer } from './read-drawer.ts';

/** What is refused of one text, or of several files together. */
function refusedIn(...texts: readonly string[]): readonly RefusalParts[] {
  try {
    readDrawer(texts.map((text, index) => ({ text, file: `${'abc'[index]}.yaml` })));
  } catch (error) {
    if (error instanceof Refusal) return error.parts;
    throw error;
  }
  return [];
}

const good = 'coreward: 1\nfibres:\n  - { name: a, type: OM1 }\n';

interface Bad {
  readonly name: string;
  readonly text: string;
  readonly where: string;
  readonly what: RegExp;
  readonly mend: RegExp;
}

/** One slip each, and one refusal. */
const bad: readonly Bad[] = [
  {
    name: 'an empty file',
    text: '',
    where: 'a.yaml:1:1',
    what: /nothing stands where a drawer belongs/,
    mend: /the lists `lasers`, `collimators` and `fibres`/,
  },
  {
    name: 'a table of another program',
    text: 'name,type\na,OM1\n',
    where: 'a.yaml:1:1',
    what: /text stands where a drawer belongs/,
    mend: /Write `coreward: 1`/,
  },
  {
    name: 'a bare list of parts',
    text: '- { name: a, type: OM1 }\n',
    where: 'a.yaml:1:1',
    what: /a list stands where a drawer belongs/,
    mend: /each part with a name/,
  },
  {
    name: 'a version that is yet to come, with keys that nobody knows',
    text: 'coreward: 2\ncupboards: []\nfibres: 7\n',
    where: 'a.yaml:1:11 coreward',
    what: /`2` is a later version/,
    mend: /Write `1`\. If a later Coreward wrote/,
  },
  {
    name: 'no version',
    text: good.replace('coreward: 1\n', ''),
    where: 'a.yaml:1:1 coreward',
    what: /`coreward` is missing/,
    mend: /Write `coreward: 1`/,
  },
  {
    name: 'tabs, and what no longer fits around them',
    text: `${good}lasers:\n\t- name: l\n    wavelength: 520 nm\n    power: 5 mW\n`,
    where: 'a.yaml:5:1',
    what: /Tabs are not allowed as indentation/,
    mend: /Indent with spaces/,
  },
  {
    name: 'aliases that unfold without end',
    text: `coreward: 1\na: &a [x, x, x, x, x, x, x, x]\n${'bcdefgh'
      .split('')
      .map((name, i) => `${name}: &${name} [${Array(9).fill(`*${'abcdefg'[i]}`).join(', ')}]`)
      .join('\n')}\n`,
    where: 'a.yaml:',
    what: /its aliases unfold to more/,
    mend: /Write the parts out/,
  },
  {
    name: 'a key twice',
    text: `${good}fibres: []\n`,
    where: 'a.yaml:4:1',
    what: /`fibres` stands twice/,
    mend: /Take out one of the two/,
  },
];

test.each(bad)('$name is refused once, where it stands', ({ text, where, what, mend }) => {
  const refused = refusedIn(text);
  expect(refused).toHaveLength(1);
  expect(refused[0]?.where).toContain(where);
  expect(refused[0]?.what).toMatch(what);
  expect(refused[0]?.mend).toMatch(mend);
});

test('line ends of another system and a mark at its beginning change nothing', () => {
  expect(refusedIn(good.replaceAll('\n', '\r\n'))).toEqual([]);
  expect(refusedIn(`\ufeff${good}`)).toEqual([]);
});

test('all that is wrong is told at once, from the top of the text', () => {
  const text = [
    'coreward: 1',
    'collimators:',
    '  - { name: a, focal length: 8 }',
    '  - { name: a, focal length: 8 mW }',
    'mounts: []',
    'fibres: G.652.D',
    'lasers:',
    '  - { wavelength: 520 nm, power: 5 mW, beam: { diameter: 1 mm } }',
  ].join('\n');
  expect(refusedIn(text).map(({ where }) => where)).toEqual([
    'a.yaml:3:30 collimators.1.focal length',
    'a.yaml:4:13 collimators.2.name',
    'a.yaml:4:30 collimators.2.focal length',
    'a.yaml:5:1 mounts',
    'a.yaml:6:9 fibres',
    'a.yaml:8:5 lasers.1.name',
  ]);
});

test('a file that is named twice, or copied, is refused once and not part by part', () => {
  const refused = refusedIn(good, good);
  expect(refused).toHaveLength(1);
  expect(refused[0]).toEqual({
    where: 'b.yaml',
    what: 'it holds word for word what a.yaml holds',
    mend: 'Name only one of the two.',
  });
});

test('what is wrong in several files is told of all of them', () => {
  const refused = refusedIn('', 'coreward: 1\nfibres: 7\n', good);
  expect(refused.map(({ where }) => where)).toEqual(['a.yaml:1:1', 'b.yaml:2:9 fibres']);
});
