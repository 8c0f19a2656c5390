import type { BookEntry } from '@coreward/bench';
import type { KeptEntry } from '@coreward/contract';
import { expect, test } from 'vitest';
import { withOwn } from './use-entries.ts';

const entry = (id: string, launch = 'this'): KeptEntry => ({ id, kind: 'note', launch, time: '', data: {} });
const ids = (entries: readonly BookEntry[]) => entries.map(({ id }) => id);

test('an answer that was on its way before takes none of the page’s own entries away', () => {
  const own = [entry('third'), entry('second')];
  expect(ids(withOwn([entry('first')], own, 'this'))).toEqual(['third', 'second', 'first']);
  expect(ids(withOwn([entry('second'), entry('first')], own, 'this'))).toEqual(['third', 'second', 'first']);
});

test('what the answer knows stands once, in its place', () => {
  const found = [entry('elsewhere'), entry('second'), entry('first')];
  expect(withOwn(found, [entry('second')], 'this')).toEqual(found);
});

test('what was entered of another launch before the page went on to this one stays there', () => {
  const own = [entry('second'), entry('other', 'that')];
  expect(ids(withOwn([entry('first')], own, 'this'))).toEqual(['second', 'first']);
});
