/** Readings as they are typed: settings apart, and the columns cell by cell, before anybody reads them as numbers. */
import { exampleHeading } from './assign.ts';
import type { ColumnSpec, Gauge, SettingSpec } from './gauge.ts';
import { readHeading, tidy } from './heading.ts';
import { isJson } from './read-readings.ts';
import { separatorOf } from './read-table.ts';

/** What stands on the page of a gauge: its settings by name, as texts, and the table as text. */
export interface Sheet {
  readonly settings: Readonly<Record<string, string>>;
  readonly text: string;
}

/** A table in cells; what cannot be shown so stays a text. */
export interface Grid {
  /** Lines above the headings that are no settings of the gauge. */
  readonly above: readonly string[];
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Longer tables are shown as text. */
export const mostGridRows = 60;

/** What a column of a sheet that nobody has filled in is headed. */
export const emptyGrid = ({ columns }: Gauge): Grid => ({
  above: [],
  headings: columns.filter(({ needed }) => needed).map(exampleHeading),
  rows: [],
});

/** A text with the gauge's own settings taken out of its lines. */
export function sheetOf(gauge: Gauge, text: string): Sheet {
  if (isJson(text)) return { settings: {}, text };
  const settings: Record<string, string> = {};
  const rest = lines(text).filter((line) => {
    const [, name, value] = /^\s*(?:[#%]\s*)?([^:=#%;,\t]+?)\s*[:=]\s*(.+?)[\s,;]*$/u.exec(line) ?? [];
    const spec = name === undefined ? undefined : gauge.settings.find((one) => isNamed(one, tidy(name)));
    if (spec === undefined || value === undefined || spec.name in settings) return true;
    settings[spec.name] = value;
    return false;
  });
  return { settings, text: rest.join('\n') };
}

const isNamed = ({ name, otherNames = [] }: SettingSpec, told: string): boolean =>
  name === told || otherNames.includes(told);

/** A text in cells; `null` where it is JSON, or longer than is typed. */
export function gridOf(text: string): Grid | null {
  if (isJson(text)) return null;
  const all = lines(text);
  const isAbove = (line: string): boolean => /^\s*[#%]/u.test(line) || line.trim() === '';
  const from = all.findIndex((line) => !isAbove(line));
  if (from < 0) return { above: all.filter((line) => line.trim() !== ''), headings: [], rows: [] };
  const above = all.slice(0, from).filter((line) => line.trim() !== '');
  const body = all.slice(from + 1);
  while (body.length > 0 && body.at(-1)!.trim() === '') body.pop();
  if (body.length > mostGridRows || body.some((line) => /^\s*[#%]/u.test(line))) return null;
  const separator = separatorOf(all[from]!);
  const cells = (line: string): readonly string[] =>
    line.split(separator).map((cell) => unquoted(cell.trim()));
  // a space at the end is on its way to a unit
  const headings = all[from]!.split(separator).map((cell) => unquoted(cell.trimStart()));
  const rows = body.map(cells);
  // a row that does not fit is shown as it was given, for its refusal
  if (rows.some((row) => row.length > headings.length)) return null;
  return {
    above,
    headings,
    rows: rows.map((row) => [...row, ...Array<string>(headings.length - row.length).fill('')]),
  };
}

/** Cells as a text; semicolons leave decimal commas to the numbers. */
export const textOfGrid = ({ above, headings, rows }: Grid): string =>
  `${[...above, headings.join(';'), ...rows.map((row) => row.join(';'))].join('\n')}\n`;

/** A grid with one cell changed; behind its last row a new one begins. Empty rows at the end are dropped. */
export function withCell(grid: Grid, row: number, column: number, text: string): Grid {
  const cell = text.replace(/[;\t\r\n]/gu, ' ').trim();
  const rows = [...grid.rows];
  while (rows.length <= row) rows.push(grid.headings.map(() => ''));
  rows[row] = rows[row]!.with(column, cell);
  while (rows.length > 0 && rows.at(-1)!.every((one) => one === '')) rows.pop();
  return { ...grid, rows };
}

/** A grid with the heading of a column changed, or with one more column. */
export function withHeading(grid: Grid, column: number, text: string): Grid {
  const heading = text.replace(/[;\t\r\n]/gu, ' ').trimStart();
  if (column < grid.headings.length) return { ...grid, headings: grid.headings.with(column, heading) };
  return { ...grid, headings: [...grid.headings, heading], rows: grid.rows.map((row) => [...row, '']) };
}

/** The columns of a gauge that a grid does not have. */
export function missingColumns({ columns }: Gauge, { headings }: Grid): readonly ColumnSpec[] {
  const there = headings.map((heading) => readHeading(heading).name);
  return columns.filter(
    ({ name, otherNames = [] }) => ![name, ...otherNames].some((one) => there.includes(one)),
  );
}

/** A grid with cells that were copied elsewhere put in from a place on; what stands beside them stays. */
export function withPasted(grid: Grid, row: number, column: number, text: string): Grid {
  const pasted = lines(text).filter((line) => line.trim() !== '');
  const separator = separatorOf(pasted[0] ?? '');
  return pasted.reduce(
    (filled, line, i) =>
      line
        .split(separator)
        .reduce(
          (done, cell, j) =>
            column + j < grid.headings.length
              ? withCell(done, row + i, column + j, unquoted(cell.trim()))
              : done,
          filled,
        ),
    grid,
  );
}

/** Whether a copied text brings its own headings: a first line that is not all numbers. */
export function hasHeadings(text: string): boolean {
  const [first = ''] = lines(text).filter((line) => line.trim() !== '' && !/^\s*[#%]/u.test(line));
  return isJson(text) || first.split(separatorOf(first)).some((cell) => /\p{L}{2}|\(/u.test(cell));
}

/**
 * A sheet's table without what is not finished yet: rows nobody has begun, and a last one that still lacks a cell. Every
 * other line keeps its place, so that refusals name it.
 */
export function finishedText(text: string): string {
  const all = lines(text).map((line) => (/^[;\s]*$/u.test(line) ? '' : line));
  const last = all.findLastIndex((line) => line !== '');
  if (last > 0 && all[last]!.split(';').some((cell, _, cells) => cells.length > 1 && cell.trim() === ''))
    all[last] = '';
  return all.join('\n');
}

/** Whether any reading stands under the headings. */
export function hasReadings(text: string): boolean {
  return (
    lines(text).filter((line) => line.trim() !== '' && !/^\s*[#%]/u.test(line)).length > 1 || isJson(text)
  );
}

const lines = (text: string): readonly string[] => text.replace(/^\uFEFF/u, '').split(/\r\n|\n|\r/u);

const unquoted = (cell: string): string => cell.replace(/^"(.*)"$/u, '$1');
