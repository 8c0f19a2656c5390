/** The document as a whole. */
import { expect, test } from 'vitest';
import { amissIn, goodLaunch, refusedIn, type Slip } from './launch-slips.ts';

test('the launch that the slips are made in is read', () => {
  expect(refusedIn(goodLaunch.join('\n'))).toEqual([]);
});

const slips: readonly Slip[] = [
  {
    name: 'a name that steers a terminal',
    line: 1,
    is: 'coreward: 1\nname: "green\\u001b[2J"',
    where: 'launch.yaml:2:7 name',
    what: /`green\\u001b\[2J` contains characters that cannot be printed/,
    mend: /on one line/,
    mended: 'coreward: 1\nname: green',
  },
];

test.each(slips)('$name is refused where it stands, once, with a mend that works', (slip) => {
  expect(amissIn(slip)).toEqual([]);
});

test('a drawer is not a launch, and that is all that is said', () => {
  expect(refusedIn('coreward: 1\nlasers: []\nfibres: []\n')).toEqual([
    {
      where: 'launch.yaml:2:1 lasers',
      what: '`lasers` makes this a drawer, not a launch',
      mend: 'Write one `laser`, one `collimator` and one `fibre`.',
    },
  ]);
});

test('everything is refused at once, in the order of the keys', () => {
  const text = goodLaunch
    .with(2, '  wavelength: 520')
    .with(3, '  power: -5 mW')
    .with(9, '  focal lenght: 8 mm')
    .join('\n');
  expect(refusedIn(text).map(({ where }) => where)).toEqual([
    'launch.yaml:3:15 laser.wavelength',
    'launch.yaml:4:10 laser.power',
    'launch.yaml:10:3 collimator.focal lenght',
  ]);
});

test('an empty document, a number or a list is refused as such', () => {
  for (const text of ['', '# nothing', '5', '- a']) {
    const refused = refusedIn(text);
    expect(refused).toHaveLength(1);
    expect(refused[0]?.what).toMatch(/stands where keys belong/);
    expect(refused[0]?.mend).toMatch(/coreward: 1/);
  }
});

test('a thousand unknown keys are refused in a hundred lines and a count', () => {
  const many = Array.from({ length: 1000 }, (_, i) => `  key${i}: 1`);
  const refused = refusedIn([...goodLaunch, ...many].join('\n'));
  expect(refused).toHaveLength(101);
  expect(refused.at(-1)?.what).toBe('900 more places are refused');
});
