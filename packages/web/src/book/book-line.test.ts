import type { KeptEntry } from '@coreward/contract';
import { expect, test } from 'vitest';
import { entryLines, entryText } from './book-line.ts';

const entry = (
  kind: string,
  data: KeptEntry['data'],
  id = '018f0000-0000-7000-8000-000000000001',
): KeptEntry => ({
  id,
  kind,
  data,
  launch: null,
  time: '2026-11-29T09:00:00.000Z',
});

test('a move of a steer is told in its words, without the figures it is read back from', () => {
  const data = {
    steer: 's',
    text: 'M1, horizontal screw: + moves the spot right',
    answer: '{"outcome":"went"}',
  };
  expect(entryText(entry('steer', data))).toBe('M1, horizontal screw: + moves the spot right');
});

test('an answer about a bench has no words of its own, and is told with its question', () => {
  expect(entryText(entry('answer', { question: 'isolator', answer: 'no' }))).toBe('isolator: no');
});

test('a move on a simulated bench is marked, one on a real bench is not', () => {
  const lines = entryLines([
    entry('walk', { text: 'practice walk begun', begun: { seed: 7 } }, 'a'),
    entry('walk', { walk: 'a', text: 'hands off: 6.13 mW' }, 'b'),
    entry('walk', { text: 'walk begun', begun: { seed: null } }, 'c'),
    entry('walk', { walk: 'c', text: 'hands off: 2 mW' }, 'd'),
    entry('steer', { session: 's', text: 'practice steer begun', practice: 7 }, 'e'),
    entry('steer', { session: 's', text: 'M1' }, 'f'),
    entry('steer', { session: 't', text: 'steer begun', practice: null }, 'g'),
    entry('steer', { session: 't', text: 'M2' }, 'h'),
    entry('note', { text: 'cleaned the facet' }, 'i'),
  ]);
  expect(lines.flatMap((line) => (line.kind === 'entry' && line.practised ? [line.entry.id] : []))).toEqual([
    'b',
    'f',
  ]);
});
