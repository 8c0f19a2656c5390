import type { BookEntry } from '@coreward/bench';
import { expect, test } from 'vitest';
import { withOwn } from './use-entries.ts';

const entry = (id: string): BookEntry =>
  ({ id, kind: 'note', launch: null, time: '', data: {} }) as BookEntry;
const ids = (entries: readonly BookEntry[]) => entries.map(({ id }) => id);

test('an answer that was on its way before takes none of the page’s own entries away', () => {
  const own = [entry('third'), entry('second')];
  expect(ids(withOwn([entry('first')], own))).toEqual(['third', 'second', 'first']);
  expect(ids(withOwn([entry('second'), entry('first')], own))).toEqual(['third', 'second', 'first']);
});

test('what the answer knows stands once, in its place', () => {
  const found = [entry('elsewhere'), entry('second'), entry('first')];
  expect(withOwn(found, [entry('second')])).toEqual(found);
});
