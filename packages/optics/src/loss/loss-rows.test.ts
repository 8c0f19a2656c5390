import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { lossRows, misses } from '../../reference/loss-rows.ts';

test('every row about losses and connectors is asked for by a test of this folder', () => {
  const tests = readdirSync(import.meta.dirname)
    .filter((name) => name.endsWith('.test.ts') && name !== 'loss-rows.test.ts')
    .map((name) => readFileSync(`${import.meta.dirname}/${name}`, 'utf8'))
    .join('\n');
  const rows = lossRows.filter(({ topic }) => topic.startsWith('loss/') || topic === 'fibre/connector');
  expect(rows.length).toBe(60);
  expect(rows.filter(({ id }) => !tests.includes(`'${id}'`)).map(({ id }) => id)).toEqual([]);
});

test('a wrong, a missing and a needless answer are all noticed', () => {
  const row = lossRows.find(({ id }) => id === 'att-budget-length')!;
  expect(misses(row, { loss_dB: 0.27, transmission: 0.939723 })).toEqual([]);
  expect(misses(row, { loss_dB: 0.2701, transmission: 0.939723 })).toHaveLength(1);
  expect(misses(row, { loss_dB: 0.27 })).toHaveLength(1);
  expect(misses(row, { loss_dB: Number.NaN, transmission: 0.939723 })).toHaveLength(1);
  expect(misses(row, { loss_dB: 0.27, transmission: 0.939723, more: 1 })).toHaveLength(1);
});
