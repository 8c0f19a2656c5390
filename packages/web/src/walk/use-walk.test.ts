import type { WalkStands } from '@coreward/contract';
import { expect, test } from 'vitest';
import { newerStands, type Since } from './use-walk.ts';

const m1 = { screw: { mirror: 'M1', axis: 'horizontal' }, turns: 0.25 } as const;
type Practice = NonNullable<WalkStands['practice']>;

/** A practice walk with so many acts. */
function stands(id: string, acts: number, practice: Partial<Practice> = {}): WalkStands {
  const walk = { id, acts: Array.from({ length: acts }, () => ({ do: 'undo' })) };
  return {
    walk: walk as unknown as WalkStands['walk'],
    practice: { isBlocked: false, turned: null, truth: null, ...practice } as Practice,
  };
}
const none: Since = { acted: 0, blocked: 0, turned: 0 };
const turned = m1 as unknown as Practice['turned'];

test('an answer from before an act takes it not back, whatever it says', () => {
  const known = stands('a', 3);
  expect(newerStands(known, stands('a', 2), none, { ...none, acted: 1 })).toBe(known);
  expect(newerStands(known, stands('a', 2), none, none)).toBe(known);
  const newer = stands('a', 4);
  expect(newerStands(known, newer, none, none)).toEqual(newer);
});

test('the walk before is not brought back by an answer from before the new one was begun; another page’s is taken', () => {
  const known = stands('b', 0);
  const other = stands('a', 9);
  expect(newerStands(known, other, none, { ...none, acted: 1 })).toBe(known);
  expect(newerStands(known, other, none, none)).toBe(other);
  expect(newerStands(known, { walk: null, practice: null }, none, { ...none, acted: 1 })).toBe(known);
});

test('a beam that was blocked and a screw that was turned since stay so', () => {
  const known = stands('a', 3, { isBlocked: true, turned });
  const found = stands('a', 3);
  const later = { acted: 0, blocked: 1, turned: 1 };
  expect(newerStands(known, found, none, later)?.valueOf()).toMatchObject({
    practice: { isBlocked: true, turned },
  });
  // nothing was done since: the station knows best
  expect(newerStands(known, found, later, later)).toEqual(found);
  // the next step begins with no screw turned
  expect(newerStands(known, stands('a', 4), none, { ...none, turned: 1 })).toMatchObject({
    practice: { turned: null },
  });
});

test('what is known is nothing, or a station that did not answer: whatever is found is taken', () => {
  const found = stands('a', 1);
  expect(newerStands(null, found, none, none)).toBe(found);
  expect(newerStands('failed', found, none, none)).toBe(found);
});
