import type { KeptEntry } from '@coreward/contract';
import { expect, test } from 'vitest';
import { entryText } from './book-line.ts';

const entry = (kind: string, data: KeptEntry['data']): KeptEntry => ({
  id: '018f0000-0000-7000-8000-000000000001',
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
