/** The collimator: its focus, its glass and its surfaces. */
import { expect, test } from 'vitest';
import { amissIn, goodLaunch, refusedIn, type Slip } from './launch-slips.ts';

const slips: readonly Slip[] = [
  {
    name: 'a focus written as a length alone',
    line: 10,
    is: '  focal length: 8 mm\n  focus: 6.2 mm',
    where: 'launch.yaml:11:10 collimator.focus',
    what: /`6\.2 mm` stands where keys belong/,
    mend: /^Write `\{ set for: 6\.2 mm \}`\.$/,
    mended: '  focal length: 8 mm\n  focus: { set for: 6.2 mm }',
  },
  {
    name: 'a focus written as a bare number',
    line: 10,
    is: '  focal length: 8 mm\n  focus: 6.2',
    where: 'launch.yaml:11:10 collimator.focus',
    what: /`6\.2` is not among the words/,
    mend: /^Write `best` or `\{ set for: 635 nm \}`\.$/,
    mended: '  focal length: 8 mm\n  focus: { set for: 635 nm }',
  },
  {
    name: 'half a lens surface',
    line: 14,
    is: 'output: { collimator: { focal length: 8 mm, surfaces: { count: 1.5 } } }',
    where: 'launch.yaml:14:64 output.collimator.surfaces.count',
    what: /`1\.5` is not a count/,
    mend: /a whole number from 0 to 40/,
    mended: 'output: { collimator: { focal length: 8 mm, surfaces: { count: 2 } } }',
  },
  {
    name: 'a lens with a glass and without one',
    line: 10,
    is: '  focal length: 8 mm\n  glass: F2\n  focal shift: 0',
    where: 'launch.yaml:12:16 collimator.focal shift',
    what: /`focal shift: 0` says that no glass moves the focus/,
    mend: /Take out `focal shift` or `glass`/,
    mended: '  focal length: 8 mm\n  glass: F2',
  },
  {
    // the catalogue's formula for N-BK7 holds from 0.3 to 2.5 µm
    name: 'a lens of a glass that is not known in this light',
    line: 3,
    is: '  wavelength: 260 nm',
    where: 'launch.yaml:10:3 collimator.glass',
    what: /the index of N-BK7 is known from 300 nm to 2\.5 µm, not at 260 nm/,
    mend: /Write `focal shift: 0` and no `glass`/,
    // nor is anything known of the fibre's attenuation there
    refusals: 2,
    mended: '  wavelength: 450 nm',
  },
  {
    // sin θ = radius/focal length (Abbe's sine condition, textbook, from memory) is at most 1
    name: 'a lens wider than any of its focal length',
    line: 10,
    is: '  focal length: 8 mm\n  clear aperture: 16.1 mm',
    where: 'launch.yaml:11:19 collimator.clear aperture',
    what: /has no focal length of 8 mm/,
    mend: /^Write `clear aperture: 15 mm` or less/,
    mended: '  focal length: 8 mm\n  clear aperture: 15 mm',
  },
];

test.each(slips)('$name is refused where it stands, once, with a mend that works', (slip) => {
  expect(amissIn(slip)).toEqual([]);
});

test('a launch without a collimator line is refused; `none` is a word of its own', () => {
  const [refused, ...more] = refusedIn(
    goodLaunch.filter((line) => !/collimator|focal/u.test(line)).join('\n'),
  );
  expect(more).toEqual([]);
  expect(refused).toEqual({
    where: 'launch.yaml:1:1 collimator',
    what: '`collimator` is missing',
    mend: 'Write `collimator: { focal length: 6.2 mm }` with your own value, or `collimator: none`.',
  });
});
