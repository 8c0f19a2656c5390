import { expect, test } from 'vitest';
import { fiveLinesLaunch, observingLoftDrawer } from '../example/example-texts.ts';
import { Refusal } from '../refusal.ts';
import { partsIn } from './part.ts';
import { readSinglePart } from './single-part.ts';

const file = 'x.drawer.yaml';

const red = 'coreward: 1\nreferences: [{ name: red, wavelength: 635 nm, power: 1 mW }]\n';

// [what is wrong, the document, what is said]
const refused = [
  ['no part', 'coreward: 1\n', 'there is no part in it'],
  [
    'two parts',
    red.replace(']', ', { name: redder, wavelength: 650 nm, power: 1 mW }]'),
    'there are 2 parts in it',
  ],
  ['two of different kinds', `${red}detectors: [{ name: phone, kind: camera }]`, 'there are 2 parts in it'],
  ['a path', `${red}path: [{ space: 1 m }]`, 'a path is no part'],
  ['a launch', fiveLinesLaunch, 'a launch, not a drawer'],
] as const;

for (const [what, text, said] of refused) {
  test(`a document with ${what} is refused as a single part`, () => {
    expect(() => readSinglePart(text, file)).toThrow(Refusal);
    expect(() => readSinglePart(text, file)).toThrow(said);
  });
}

test('a reference source by itself is a single part', () => {
  expect(readSinglePart(red, file)).toEqual({ kind: 'reference', name: 'red', text: red });
});

test('what a drawer is taken apart into are single parts, each of its kind', () => {
  const parts = partsIn(observingLoftDrawer);
  // counted by eye in the example
  expect(parts).toHaveLength(3 + 6 + 3 + 5 + 3 + 1);
  for (const part of parts) expect(readSinglePart(part.text, file)).toMatchObject(part);
});
