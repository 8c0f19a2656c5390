import { expect, test } from 'vitest';
import { nearestWord } from './nearest-word.ts';

const known = ['focal length', 'clear aperture', 'focus', 'glass', 'focal shift'];

const slips: readonly (readonly [written: string, meant: string | null])[] = [
  ['focal lenght', 'focal length'],
  ['focal_length', 'focal length'],
  ['focalLength', 'focal length'],
  ['Glass', 'glass'],
  ['focsu', 'focus'],
  ['clear apertur', 'clear aperture'],
  ['colour', null],
  ['', null],
  ['x'.repeat(10_000), null],
];

for (const [written, meant] of slips) {
  test(`\`${written.slice(0, 20)}\` ${meant === null ? 'is near to nothing' : `is taken for \`${meant}\``}`, () => {
    expect(nearestWord(written, known)).toBe(meant);
  });
}
