import { expect, test } from 'vitest';
import { gaugeNamed } from './gauge-table.ts';
import { columnsToFill, nextRow, withReadingTaken } from './reading-into-cell.ts';
import { gridOf, textOfGrid } from './sheet.ts';

const grid = (text: string) => gridOf(text)!;
const now = { value: 1.23456789e-3, uncertainty: 2.3e-6, count: 12, saturated: false };
const volts = { name: 'bench meter', unit: 'V' } as const;

test('a reading stands in the unit of its column, and above it what it is the mean of', () => {
  const taken = withReadingTaken(grid('position (mm);power (mV)\n0;5\n0.25;\n'), 1, now, volts, '');
  if (!taken.ok) throw new Error(taken.what);
  expect(taken.row).toBe(1);
  expect(textOfGrid(taken.grid)).toBe(
    '# row 2, column power, is the mean of 12 readings of bench meter, give or take 0.0023\nposition (mm);power (mV)\n0;5\n0.25;1.23457\n',
  );
});

test('a place goes on by its step, and is left alone where it is typed', () => {
  const first = withReadingTaken(grid('position (mm);power (mV)\n0,1;\n'), 1, now, volts, '0,1');
  if (!first.ok) throw new Error(first.what);
  const second = withReadingTaken(first.grid, 1, now, volts, '0,1');
  if (!second.ok) throw new Error(second.what);
  const third = withReadingTaken(second.grid, 1, now, volts, '0,1');
  if (!third.ok) throw new Error(third.what);
  expect(third.grid.rows.map(([place]) => place)).toEqual(['0,1', '0.2', '0.3']);
  const typed = withReadingTaken(grid('position (mm);power (mV)\n0;1\n7;\n'), 1, now, volts, '0,1');
  expect(typed.ok && typed.grid.rows[1]![0]).toBe('7');
});

test('an empty column takes the instrument’s unit; a filled one in another is told so', () => {
  const watts = { name: 'head', unit: 'W' } as const;
  const empty = withReadingTaken(grid('position (mm);power (mV)\n'), 1, now, watts, '');
  expect(empty.ok && empty.grid.headings[1]).toBe('power (mW)');
  expect(empty.ok && empty.grid.rows[0]![1]).toBe('1.23457');
  const filled = withReadingTaken(grid('position (mm);power (mV)\n0;5\n'), 1, now, watts, '');
  expect(filled).toMatchObject({ ok: false, what: expect.stringContaining('`mV`') });
});

test('only columns that an instrument can read are offered', () => {
  const edge = gaugeNamed('knife-edge')!;
  expect(columnsToFill(edge, grid('position (mm);power (mV)\n'), 'V')).toEqual([1]);
  const diode = gaugeNamed('photodiode')!;
  expect(columnsToFill(diode, grid('voltage (mV);dark voltage (mV)\n'), 'V')).toEqual([0, 1]);
  expect(columnsToFill(diode, grid('voltage (mV)\n'), 'W')).toEqual([]);
  expect(columnsToFill(gaugeNamed('camera-linearity')!, grid('light;code\n'), 'relative')).toEqual([0, 1]);
  expect(nextRow(grid('position (mm);power (mV)\n0;5\n1;\n'), 1)).toBe(1);
});
