import type { CurrentReading } from '../instrument/current-reading.ts';
import type { ReadingUnit } from '../instrument/reading.ts';
import type { Gauge } from './gauge.ts';
import { conversionFor, readHeading } from './heading.ts';
import { type Grid, withCell, withHeading } from './sheet.ts';

/** A table with a reading put in, or why it cannot stand there. */
export type Taken =
  | { readonly ok: true; readonly grid: Grid; readonly row: number }
  | { readonly ok: false; readonly what: string; readonly mend: string };

/** The columns of a table that an instrument of this unit can fill, by their rank. */
export function columnsToFill(gauge: Gauge, { headings }: Grid, unit: ReadingUnit): readonly number[] {
  return headings.flatMap((heading, i) => {
    const { name } = readHeading(heading);
    const spec = gauge.columns.find((one) => one.name === name || one.otherNames?.includes(name) === true);
    if (spec === undefined) return [];
    const fits =
      spec.dimension === 'reading' ||
      (unit === 'relative' && spec.dimension === 'number') ||
      ['W power', 'V voltage', 'A current'].includes(`${unit} ${spec.dimension}`);
    return fits ? [i] : [];
  });
}

/** The unit a column is headed with where nothing stands in it yet. */
const usual: Readonly<Partial<Record<ReadingUnit, string>>> = { W: 'mW', V: 'mV', A: 'µA' };

/** The first row of a column that is empty. */
export const nextRow = ({ rows }: Grid, column: number): number => {
  const empty = rows.findIndex((row) => (row[column] ?? '') === '');
  return empty === -1 ? rows.length : empty;
};

/**
 * A table with the current reading of an instrument in the next empty cell of a column, in the unit of its heading, and what
 * it is the mean of in a line above. A column with nothing in it takes the unit of the instrument.
 *
 * @param name of the instrument
 * @param step what the place goes on by, as typed, in the unit of its column, where the first other column has a place before
 *   and none here; empty: it is typed
 */
export function withReadingTaken(
  grid: Grid,
  column: number,
  { value, uncertainty, count }: CurrentReading,
  { name, unit }: { readonly name: string; readonly unit: ReadingUnit },
  step: string,
): Taken {
  const row = nextRow(grid, column);
  const isEmpty = grid.rows.every((cells) => (cells[column] ?? '') === '');
  const before = readHeading(grid.headings[column] ?? '');
  const written = isEmpty && !suits(before.unit, unit) ? (usual[unit] ?? '') : before.unit;
  const factor = factorOf(written, unit);
  if (factor === null) {
    return {
      ok: false,
      what: `the column \`${before.name}\` is in \`${before.unit}\`, and the instrument reads \`${unit}\``,
      mend: `Clear the column, or head it in a unit of \`${unit}\`.`,
    };
  }
  const headed =
    written === before.unit
      ? grid
      : withHeading(grid, column, written === '' ? before.name : `${before.name} (${written})`);
  const filled = withCell(headed, row, column, digits(value / factor));
  const doubt = uncertainty === null ? '' : `, give or take ${digits(uncertainty / factor, 2)}`;
  const about = `# row ${row + 1}, column ${before.name}, is the mean of ${count} readings of ${name.replace(/[:=#%;\t]/gu, ' ')}${doubt}`;
  const noted = {
    ...filled,
    above: [
      ...filled.above.filter((line) => !line.startsWith(`# row ${row + 1}, column ${before.name},`)),
      about,
    ],
  };
  return { ok: true, grid: stepped(noted, row, column, numberIn(step)), row };
}

const suits = (written: string, unit: ReadingUnit): boolean => factorOf(written, unit) !== null;

/** One of a heading's units in the instrument's own; null where they do not measure the same. */
function factorOf(written: string, unit: ReadingUnit): number | null {
  if (unit === 'relative' || unit === 'step')
    return written === '' || conversionFor(written, 'number') !== null ? 1 : null;
  if (written === '' || written === 'dBm') return null;
  const dimension = ({ W: 'power', V: 'voltage', A: 'current' } as const)[unit];
  return conversionFor(written, dimension)?.(1) ?? null;
}

/** Digits enough that rounding adds nothing to a meter's own. */
const digits = (value: number, places = 6): string => `${Number(value.toPrecision(places))}`;

/** A typed number, with a point or a comma; null where it is none. */
function numberIn(text: string): number | null {
  const value = Number(text.trim().replace(',', '.').replace('−', '-'));
  return text.trim() === '' || !Number.isFinite(value) ? null : value;
}

/** The place one step on from the row before, where it is not typed. */
function stepped(grid: Grid, row: number, column: number, step: number | null): Grid {
  const place = grid.headings.findIndex((_, i) => i !== column);
  const here = grid.rows[row]?.[place] ?? '';
  const before = numberIn(grid.rows[row - 1]?.[place] ?? '');
  if (step === null || here !== '' || before === null) return grid;
  // a place stepped on by tenths must not read 0.30000000000000004
  return withCell(grid, row, place, digits(before + step, 12));
}
