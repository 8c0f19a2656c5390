import { Refusal } from '../refusal.ts';
import { type LineField, lineFields } from './line-fields.ts';
import type { LineFormat } from './line-format.ts';
import type { MeterUnit } from './meter-unit.ts';
import { readLine } from './read-line.ts';
import { recogniseLines } from './recognise-lines.ts';

/** A reading of a log: how long after the first, s, and SI; null where there was too much for the meter. */
export interface LoggedReading {
  readonly after: number;
  readonly value: number | null;
}

/** Where a log has no times, its lines are taken to be this far apart, s. */
const withoutTimes = 0.1;

/**
 * The readings of a recorded log, whichever way its lines are written. Its clock is the first column that only ever goes
 * up, in seconds unless its heading names another unit of time. Lines without a reading, such as headings, are passed over.
 *
 * @param unit what the readings are counted in where the lines do not say
 * @throws {Refusal} if there is no reading in it
 */
export function readLog(text: string, unit: MeterUnit): readonly LoggedReading[] {
  const lines = text.split(/[\r\n]+/u).filter((line) => line.trim() !== '');
  // headings come first, and would speak against every way of reading the rest
  const found = recogniseLines(lines.slice(1), lines[0]) ?? recogniseLines(lines);
  if (found === null) {
    throw new Refusal({
      where: 'log',
      what: 'no column of it holds readings',
      mend: 'Give one reading a line, as in `0.10;1.25e-3`: the time in seconds and the reading.',
    });
  }
  const format = { ...found, unit: found.unit === 'counts' ? unit : found.unit };
  const said = lines.flatMap((line) => {
    const number = readLine(line, format);
    if (number === null || number.kind === 'nothing') return [];
    return [{ line, value: number.kind === 'value' ? number.value : null }];
  });
  const clock = clockOf(
    said.map(({ line }) => line),
    format,
  );
  const start = clock?.times[0] ?? 0;
  const second = clock === null ? 1 : partsOfSecond(lineFields(lines[0] ?? '', found)[clock.column]);
  return said.map(({ value }, index) => ({
    after: clock === null ? index * withoutTimes : ((clock.times[index] ?? 0) - start) / second,
    value,
  }));
}

/** The times of the lines; null if no column but that of the readings goes up from line to line. */
function clockOf(
  lines: readonly string[],
  format: LineFormat,
): { readonly column: number; readonly times: readonly number[] } | null {
  const rows = lines.map((line) => lineFields(line, format));
  const width = Math.max(0, ...(rows.length === 0 ? [] : [rows[0]!.length]));
  for (let column = 0; column < width; column += 1) {
    if (column === format.column) continue;
    const times = rows.map((row) => row[column]?.value ?? Number.NaN);
    const goesUp = times.every((time, index) => index === 0 || time >= (times[index - 1] ?? Number.NaN));
    if (goesUp && times.length > 1 && (times.at(-1) ?? 0) > (times[0] ?? 0)) return { column, times };
  }
  return null;
}

/** How many of the unit of time in a heading make a second: `time_ms`, `t (µs)`; seconds where it names none. */
function partsOfSecond(heading: LineField | undefined): number {
  const [, unit] = /(?:^|[_ ([])([munµμ]s)[)\]]?$/u.exec(heading?.text ?? '') ?? [];
  return unit === undefined ? 1 : ({ m: 1e3, n: 1e9 }[unit[0] ?? ''] ?? 1e6);
}
