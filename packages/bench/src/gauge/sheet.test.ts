import { describe, expect, test } from 'vitest';
import { gaugeNamed } from './gauge-table.ts';
import { howTos } from './how-to/how-tos.ts';
import { measured } from './measured.ts';
import {
  emptyGrid,
  finishedText,
  gridOf,
  hasHeadings,
  hasReadings,
  sheetOf,
  textOfGrid,
  withCell,
  withHeading,
  withPasted,
} from './sheet.ts';

const edge = gaugeNamed('knife-edge')!;

test.each(howTos.filter(({ example }) => example !== null).map((one) => [one.gauge, one.example!] as const))(
  'the example of %s says the same when it has gone through fields and cells',
  (name, example) => {
    const gauge = gaugeNamed(name)!;
    const plain = measured(gauge, { settings: {}, text: example }, null, 'readings');
    const sheet = sheetOf(gauge, example);
    const grid = gridOf(sheet.text)!;
    const again = measured(gauge, { ...sheet, text: textOfGrid(grid) }, null, 'readings');
    expect(plain.kind).toBe('measured');
    expect(again).toEqual(plain);
    expect(sheet.text).not.toContain('# ');
  },
);

describe('cells', () => {
  test('a grid begins with the needed columns, and a row appears where one types', () => {
    const grid = emptyGrid(edge);
    expect(grid.headings).toEqual(['position (mm)', 'power (mV)']);
    expect(hasReadings(textOfGrid(grid))).toBe(false);
    const typed = withCell(withCell(grid, 1, 0, '5,2'), 1, 1, '0,012');
    expect(typed.rows).toEqual([
      ['', ''],
      ['5,2', '0,012'],
    ]);
    expect(hasReadings(textOfGrid(typed))).toBe(true);
    expect(withCell(withCell(typed, 1, 0, ''), 1, 1, '').rows).toEqual([]);
    expect(withHeading(typed, 2, 'distance (mm)').rows[1]).toEqual(['5,2', '0,012', '']);
  });
  test('a row that is not finished waits, and the others keep their lines', () => {
    expect(finishedText('a;b\n1;2\n;\n3;\n')).toBe('a;b\n1;2\n\n\n');
    expect(finishedText('a;b\n1;\n3;4\n')).toBe('a;b\n1;\n3;4\n');
    expect(finishedText('length (mm)\n160\n')).toBe('length (mm)\n160\n');
  });
  test('a block copied from a spreadsheet fills cells; with headings it is a table of its own', () => {
    const filled = withPasted(emptyGrid(edge), 0, 0, '5,0\t0,003\n5,2\t0,012\n');
    expect(filled.rows).toEqual([
      ['5,0', '0,003'],
      ['5,2', '0,012'],
    ]);
    expect(hasHeadings('5,0\t0,003\n5,2\t0,012')).toBe(false);
    expect(hasHeadings('position (mm)\tpower (mW)\n5,2\t0,012')).toBe(true);
    expect(hasHeadings('1e-3;2')).toBe(false);
  });
  test('JSON and long tables stay a text', () => {
    expect(gridOf('{ "positions_m": [] }')).toBeNull();
    expect(gridOf(`x (mm),p\n${'1,2\n'.repeat(61)}`)).toBeNull();
    expect(gridOf('x (mm),p\n0,25,1,5\n')).toBeNull();
  });
});

describe('what is refused reads as it does in a file', () => {
  const refusals: readonly (readonly [string, string, RegExp])[] = [
    ['empty', '', /no readings/u],
    ['decimal commas between commas', 'position (mm),power (mW)\n0,25,1,5\n', /Decimal commas/u],
    ['wrong unit', 'position (mW),power (mm)\n0,1\n', /`mW`, which is not a length/u],
    ['a word', 'position (mm);power (mW)\n0,25;bright\n1;2\n', /`bright` is no number/u],
  ];
  test.each(refusals)('%s', (_, text, said) => {
    const found = measured(edge, { settings: {}, text }, null, 'readings');
    expect(found.kind).toBe('refused');
    expect(JSON.stringify(found)).toMatch(said);
  });
  test('a setting that is typed goes before the one in the text', () => {
    const caustic = gaugeNamed('caustic')!;
    const text = howTos.find(({ gauge }) => gauge === 'caustic')!.example!;
    const typed = measured(caustic, { settings: { wavelength: '260 nm' }, text }, null, 'readings');
    const given = measured(caustic, { settings: {}, text }, null, 'readings');
    if (typed.kind !== 'measured' || given.kind !== 'measured') throw new Error('refused');
    const m2 = (of: typeof typed) => Number.parseFloat(of.answers.find(({ name }) => name === 'M²')!.value!);
    // M² goes as one over the wavelength, and is not below 1; half of a figure in its last of three places is a hundredth
    expect(m2(typed) / m2(given)).toBeCloseTo(2, 1);
  });
});
