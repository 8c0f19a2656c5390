import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readCsv, writeCsv } from './csv.ts';

/** What may stand in a cell: anything, and what CSV writes specially. */
const text = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }).filter((one) => /^\P{Surrogate}*$/u.test(one)),
  fc.constantFrom('', '\ufeffcoreward: 1\r\n', 'a,"b"\r\nc', '"', '\r'),
);

test('any table goes through CSV unchanged', () => {
  const rows = fc.array(fc.array(text, { minLength: 1, maxLength: 5 }), { maxLength: 6 });
  fc.assert(
    fc.property(rows, (table) => {
      expect(readCsv(writeCsv(table))).toEqual(table);
    }),
    { numRuns: 300 },
  );
});

test('a spreadsheet’s CSV is read as well: its mark of UTF-8, plain line feeds, no last line break', () => {
  expect(readCsv('\ufeffa,b\n1,"2 ""inches"""')).toEqual([
    ['a', 'b'],
    ['1', '2 "inches"'],
  ]);
  expect(readCsv('a,\n')).toEqual([['a', '']]);
  expect(readCsv('a,')).toEqual([['a', '']]);
  expect(readCsv('a"b')).toBeNull();
  expect(readCsv('"open')).toBeNull();
});
