import { expect, test } from 'vitest';
import { cameraLinearityOf } from './camera-levels.ts';

const exponent = (levels: readonly (readonly [string, number])[]) => {
  const told = cameraLinearityOf(levels.map(([level, value]) => ({ level, value })));
  return told.kind === 'measured' ? told.answers[0]! : told.refused;
};

test('readings in proportion to two known levels have an exponent of 1, those of an undecoded picture about 0.45', () => {
  expect(
    exponent([
      ['100 %', 412],
      ['25 %', 103],
    ]),
  ).toMatchObject({ value: expect.stringMatching(/^1(?:\.0+)? /u) });
  // 2.2 is the exponent that sRGB comes near (IEC 61966-2-1, from memory): 1/2.2 = 0.4545
  const coded = [
    ['1', 255],
    ['0,25', 255 * 0.25 ** (1 / 2.2)],
  ] as const;
  expect(exponent(coded)).toMatchObject({ value: expect.stringMatching(/^0\.45/u) });
});

test('one level, or two alike, say nothing, and a level that is no number is refused', () => {
  expect(exponent([['1', 400]])).toMatchObject([{ mend: expect.stringMatching(/two levels/u) }]);
  expect(
    exponent([
      ['1', 400],
      ['0.9', 360],
    ]),
  ).toMatchObject({ value: null });
  expect(
    exponent([
      ['bright', 400],
      ['0.9', 360],
    ]),
  ).toMatchObject([{ what: expect.stringMatching(/bright/u) }]);
});
