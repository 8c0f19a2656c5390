import { expect, test } from 'vitest';
import { partId } from './part-id.ts';

// Chosen here: ids are for programs, which split at white space, commas and dots.
const ids: readonly (readonly [name: string, id: string])[] = [
  ['M1', 'M1'],
  ['the far mirror', 'the-far-mirror'],
  ['1" silver, #2', '1-silver-2'],
  ['oberer Spiegel (größer)', 'oberer-Spiegel-größer'],
  ['--x--', 'x'],
  ['***', ''],
];

for (const [name, id] of ids) {
  test(`${name} is ${id || 'nothing'} in an id`, () => expect(partId(name)).toBe(id));
}
