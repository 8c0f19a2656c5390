import { expect, test } from 'vitest';
import { Refusal } from '../refusal.ts';
import { located } from './located.ts';

const text =
  'coreward: 1\nfibre:\n  core diameter: 0.5 µm\nbends:\n  - radius: 1 mm\n  - { radius: 2 mm, turns: 3 }\n';

function whereOf(key: string): string | undefined {
  try {
    located({ text, file: 'launch.yaml' }, () => {
      throw new Refusal({ where: key, what: 'it is odd', mend: 'Mend it.' });
    });
  } catch (error) {
    if (error instanceof Refusal) return error.parts[0]?.where;
    throw error;
  }
  return undefined;
}

// lines and columns as an editor counts them, of the value behind the key
const places: readonly (readonly [key: string, where: string])[] = [
  ['fibre.core diameter', 'launch.yaml:3:18 fibre.core diameter'],
  ['bends.2.turns', 'launch.yaml:6:28 bends.2.turns'],
  ['bends.1', 'launch.yaml:5:5 bends.1'],
  // what is left out stands in the part that leaves it out
  ['fibre.numerical aperture', 'launch.yaml:3:3 fibre.numerical aperture'],
  ['collimator.focal length', 'launch.yaml:1:1 collimator.focal length'],
  ['', 'launch.yaml:1:1'],
];

for (const [key, where] of places) {
  test(`${key || 'the document'} is at ${where}`, () => expect(whereOf(key)).toBe(where));
}

test('what is no refusal passes as it is, and so does a result', () => {
  expect(() =>
    located({ text, file: 'x' }, () => {
      throw new RangeError('ours');
    }),
  ).toThrow(RangeError);
  expect(located({ text, file: 'x' }, () => 7)).toBe(7);
});
