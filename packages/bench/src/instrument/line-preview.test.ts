import { expect, test } from 'vitest';
import { linePreview } from './line-preview.ts';
import { logWords } from './log-words.ts';

test('a device’s lines are shown column by column with what is read off them', () => {
  const format = { separator: 'semicolon', decimal: 'comma', column: 1, unit: 'mW' } as const;
  expect(linePreview(['12:01;0,532;mW', '12:02;OL;mW', 'hello'], format)).toEqual([
    { columns: ['12:01', '0,532', 'mW'], reading: '0.5320 mW' },
    { columns: ['12:02', 'OL', 'mW'], reading: 'too much for it' },
    { columns: ['hello'], reading: null },
  ]);
});

test('a log says how much is in it, or why it cannot be played', () => {
  expect(logWords('t,power_mW\n0,1.0\n1,1.2\n2.5,0.8\n', 'W')).toEqual({
    ok: true,
    words: '3 readings over 2.5 s',
  });
  expect(logWords('nothing here', 'W')).toMatchObject({ ok: false });
});
