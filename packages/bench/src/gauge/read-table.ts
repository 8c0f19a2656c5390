import { Refusal, type RefusalParts } from '../refusal.ts';
import type { RawColumn, RawReadings, RawSetting } from './assign.ts';
import { readHeading } from './heading.ts';

/** More rows than this are refused. */
export const mostRows = 50_000;

/** Refusals that are told of one table; the rest is counted. */
const mostRefusals = 8;

/**
 * A table of readings as text: columns apart by commas, semicolons or tabs, headed by names with units; above it lines
 * such as `# wavelength: 515 nm`. Decimal commas are read where columns are apart by semicolons or tabs.
 *
 * @param file its name, for refusals
 * @throws {Refusal} if there is no heading, a cell is no number, or a row has too few or too many cells
 */
export function readTable(text: string, file: string): RawReadings {
  const lines = text.replace(/^\uFEFF/u, '').split(/\r\n|\n|\r/u);
  const settings: RawSetting[] = [];
  let heading: string[] | null = null;
  let separator = ',';
  const rows: Row[] = [];
  const refusals: RefusalParts[] = [];
  for (const [i, line] of lines.entries()) {
    const where = `${file}:${i + 1}`;
    if (line.trim() === '') continue;
    const setting = settingOf(line, where, heading === null);
    if (setting !== null) settings.push(setting);
    if (setting !== null || /^\s*[#%]/u.test(line)) continue;
    if (heading === null) {
      separator = separatorOf(line);
      heading = cellsOf(line, separator);
      if (heading.every((cell) => readCell(cell, separator) !== null)) throw noHeading(where, heading.length);
      continue;
    }
    const cells = cellsOf(line, separator);
    if (cells.length === heading.length) rows.push({ where, cells });
    else refusals.push(wrongWidth(cells.length, heading.length, separator, where));
    if (rows.length > mostRows) throw tooLong(where);
  }
  if (heading === null && settings.length > 0 && refusals.length === 0)
    return { where: file, columns: [], settings };
  if (heading === null || (rows.length === 0 && refusals.length === 0)) throw empty(file);
  const columns: RawColumn[] = [];
  for (const [j, text] of heading.entries()) {
    const head = readHeading(text);
    const word = sameWord(rows, j, separator);
    if (word !== null) settings.push({ name: head.name, text: word, where: file });
    else columns.push({ heading: head, values: numbersOf(rows, j, separator, refusals) });
  }
  if (refusals.length > mostRefusals)
    refusals.splice(mostRefusals, refusals.length, {
      where: file,
      what: `${refusals.length - mostRefusals} more rows are like that`,
      mend: 'Mend the first ones in the same way throughout.',
    });
  if (refusals.length > 0) throw new Refusal(refusals);
  return { where: file, columns, settings };
}

interface Row {
  readonly where: string;
  readonly cells: readonly string[];
}

/** A word that stands in every row of a column, such as the level of a far field; null for a column of numbers. */
function sameWord(rows: readonly Row[], j: number, separator: string): string | null {
  const [first] = rows;
  const word = first?.cells[j];
  if (word === undefined || word === '' || rows.length < 2 || readCell(word, separator) !== null) return null;
  return rows.every(({ cells }) => cells[j] === word) ? word : null;
}

function numbersOf(
  rows: readonly Row[],
  j: number,
  separator: string,
  refusals: RefusalParts[],
): readonly number[] {
  return rows.map(({ where, cells }) => {
    const value = readCell(cells[j]!, separator);
    if (value === null || !Number.isFinite(value))
      refusals.push({
        where,
        what: `\`${cells[j]!.slice(0, 40)}\` is no number`,
        mend: 'Write plain numbers; units stand in the heading.',
      });
    return value ?? Number.NaN;
  });
}

/** `# wavelength: 515 nm`; above the heading also without the `#`. */
function settingOf(line: string, where: string, above: boolean): RawSetting | null {
  const found = (
    above
      ? /^\s*(?:[#%]\s*)?([^:=#%]+?)\s*[:=]\s*(.+?)[\s,;]*$/u
      : /^\s*[#%]\s*([^:=]+?)\s*[:=]\s*(.+?)[\s,;]*$/u
  ).exec(line);
  return found === null ? null : { name: found[1]!, text: found[2]!, where };
}

/** What columns are apart by in a line. */
export function separatorOf(line: string): string {
  if (line.includes(';')) return ';';
  if (line.includes('\t')) return '\t';
  return ',';
}

function cellsOf(line: string, separator: string): string[] {
  const cells = line.split(separator).map((cell) => cell.trim());
  // a spreadsheet ends its lines in empty cells
  while (cells.length > 1 && cells.at(-1) === '') cells.pop();
  return cells;
}

function readCell(cell: string, separator: string): number | null {
  const plain = cell.replace(/^"(.*)"$/u, '$1').replaceAll('−', '-');
  const text = separator === ',' ? plain : plain.replace(',', '.');
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/iu.test(text) ? Number(text) : null;
}

function wrongWidth(cells: number, width: number, separator: string, where: string): RefusalParts {
  return {
    where,
    what: `there are ${cells} cells under ${width} headings`,
    mend:
      separator === ',' && cells === 2 * width
        ? 'Decimal commas? Put semicolons between the columns, in the heading too.'
        : `Give each of the ${width} columns one number in every row.`,
  };
}

const noHeading = (where: string, width: number): Refusal =>
  new Refusal({
    where,
    what: 'the first row is numbers: nothing says what the columns are',
    mend: `Write a row above it with ${width === 2 ? 'two names and units, such as `position (mm), power (mV)`' : 'the name and unit of each column, such as `position (mm)`'}.`,
  });

const empty = (file: string): Refusal =>
  new Refusal({
    where: file,
    what: 'there are no readings in it',
    mend: 'Write a row of headings with units, and the readings under it.',
  });

const tooLong = (where: string): Refusal =>
  new Refusal({
    where,
    what: `there are more than the ${mostRows} rows that are read`,
    mend: 'Average neighbouring readings, or give every tenth.',
  });
