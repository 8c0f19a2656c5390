/** Parts of the path that are two, none, or called alike. */
import { expect, test } from 'vitest';
import { amissIn, type Slip, withLine } from './launch-slips.ts';
import { readLaunch } from './read-launch.ts';

const slips: readonly Slip[] = [
  {
    name: 'a lens on the way that may be of either kind',
    line: 7,
    is: '  - lens: { focal length: 200 mm ± 90 mm }',
    where: 'launch.yaml:7:27 path.1.lens.focal length',
    what: /reaches zero, where the lens would change its kind/,
    mend: /`focal length: 200 mm within 160 mm`/,
    mended: '  - lens: { focal length: 200 mm within 160 mm }',
  },
  {
    name: 'two mirrors of one name',
    line: 8,
    is: '  - mirror: { name: M1 }\n  - mirror: { name: M1 }',
    where: 'launch.yaml:9:21 path.3.mirror.name',
    what: /two parts of the path are called `M1`/,
    mend: /`name: M1-2`/,
    mended: '  - mirror: { name: M1 }\n  - mirror: { name: M1-2 }',
  },
  {
    name: 'two parts whose names differ in spaces only',
    line: 8,
    is: '  - mirror: { name: far one }\n  - stop: { name: far-one, diameter: 3 mm }',
    where: 'launch.yaml:9:19 path.3.stop.name',
    what: /`far-one` and `far one` differ in neither letters nor digits/,
    mend: /`name: far-one-2`/,
    mended: '  - mirror: { name: far one }\n  - stop: { name: far-one-2, diameter: 3 mm }',
  },
  {
    name: 'a name without a letter',
    line: 8,
    is: '  - mirror: { name: "***" }',
    where: 'launch.yaml:8:21 path.2.mirror.name',
    what: /has no letter and no digit/,
    mend: /with one at least/,
    mended: '  - mirror: { name: M1 }',
  },
  {
    name: 'an element of the path that is two',
    line: 7,
    is: '  - { space: 300 mm, stop: { diameter: 2 mm } }',
    where: 'launch.yaml:7:22 path.1.stop',
    what: /`stop` does not go together with `space`/,
    mend: /Take out `stop`/,
    mended: '  - { space: 300 mm }',
  },
  {
    name: 'an element of the path that is none',
    line: 7,
    is: '  - 300 mm',
    where: 'launch.yaml:7:5 path.1',
    what: /`300 mm` stands where keys belong/,
    mend: /Write `\{ space: 300 mm \}`/,
    mended: '  - { space: 300 mm }',
  },
  {
    name: 'a lens on the way that has no focal length',
    line: 7,
    is: '  - lens: { focal length: 0 mm }',
    where: 'launch.yaml:7:27 path.1.lens.focal length',
    what: /so short a focal length/,
    mend: /`focal length: 50 mm`/,
    mended: '  - lens: { focal length: 50 mm }',
  },
];

test.each(slips)('$name is refused where it stands, once, with a mend that works', (slip) => {
  expect(amissIn(slip)).toEqual([]);
});

test('a part that is not named gets a name that no other part has', () => {
  const text = withLine(8, '  - mirror: { name: M2 }\n  - mirror: {}\n  - mirror: {}');
  const names = readLaunch(text, 'launch.yaml').path.flatMap((element) =>
    element.kind === 'space' ? [] : [element.name],
  );
  expect(names).toEqual(['M2', 'M3', 'M4']);
});
