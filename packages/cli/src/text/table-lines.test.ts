import type { Table } from '@coreward/bench';
import { expect, test } from 'vitest';
import { displayWidth } from './display-width.ts';
import { tableLines } from './table-lines.ts';

const table: Table = {
  kind: 'table',
  columns: [
    { heading: '', align: 'left' },
    { heading: 'loss', align: 'right' },
    { heading: '', align: 'left' },
  ],
  rows: [
    { kind: 'cells', cells: ['leaves the laser', '', { bar: 1 }] },
    { kind: 'heading', text: 'On the way' },
    { kind: 'cells', cells: ['  a mirror with a very long name', '−0.13 dB', { bar: 0.5 }] },
    { kind: 'rule' },
    { kind: 'cells', cells: ['all together', '−∞ dB', { bar: 0 }] },
  ],
};

test('columns line up, and a bar is drawn in half characters', () => {
  expect(tableLines(table, 80)).toEqual([
    '                                        loss',
    '  leaves the laser                            ━━━━━',
    '  On the way',
    '    a mirror with a very long name  −0.13 dB  ━━╸',
    '  ─────────────────────────────────────────────────',
    '  all together                         −∞ dB',
  ]);
});

test('in a narrow place the first column is wrapped, its indentation kept, the figures on its last line', () => {
  expect(tableLines(table, 38).slice(3, 5)).toEqual([
    '    a mirror with a',
    '    very long name     −0.13 dB  ━━╸',
  ]);
});

test('where there is no room at all the bars go first', () => {
  const lines = tableLines(table, 30);
  expect(lines.join('')).not.toContain('━');
  expect(Math.max(...lines.map(displayWidth))).toBeLessThanOrEqual(30);
});

test('a share that is almost nothing still leaves a trace', () => {
  const faint: Table = { ...table, rows: [{ kind: 'cells', cells: ['x', '', { bar: 1e-9 }] }] };
  expect(tableLines(faint, 80).at(-1)).toContain('╸');
});
