import type { Reading } from '@coreward/bench';
import { readCsv, writeCsv } from './csv.ts';

const columns = ['time_ms', 'value', 'saturated'] as const;

/** Readings as a table: ms since 1970, the value in the unit that the index names (empty: a gap), and 1 where saturated. */
export const readingsTable = (readings: readonly Reading[]): string =>
  writeCsv([
    columns,
    ...readings.map(({ t, value, saturated }) => [
      numberText(t),
      value === null ? '' : numberText(value),
      saturated ? '1' : '0',
    ]),
  ]);

/** With the sign of a zero, which `String` leaves out. */
const numberText = (value: number): string => (Object.is(value, -0) ? '-0' : String(value));

/** Null if the table is none of these; what its numbers are worth is checked with the rest. */
export function readingsFrom(text: string): readonly Reading[] | null {
  const [head, ...rows] = readCsv(text) ?? [];
  if (head?.join() !== columns.join()) return null;
  return rows.map(([t = '', value = '', saturated]) => ({
    t: t === '' ? Number.NaN : Number(t),
    value: value === '' ? null : Number(value),
    saturated: saturated === '1',
  }));
}
