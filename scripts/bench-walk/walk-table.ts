import type { ToldRow } from './walked.ts';

const percent = (share: number) => (100 * share).toFixed(1);
const whole = (x: number | null) => (x === null ? '—' : x.toFixed(0));

const columns: readonly (readonly [string, (row: ToldRow) => string])[] = [
  ['suite', ({ suite }) => suite],
  ['policy', ({ policy, isBaseline }) => (isBaseline ? `${policy} (baseline)` : policy)],
  ['n', ({ n }) => `${n}`],
  ['ops stay', ({ opsToStay }) => whole(opsToStay)],
  ['ops first', ({ opsToFirst }) => whole(opsToFirst)],
  ['ops at stop', ({ opsAtStop }) => whole(opsAtStop)],
  ['typed', ({ typed }) => whole(typed)],
  ['s', ({ seconds }) => whole(seconds)],
  ['fail95 %', ({ fail95 }) => percent(fail95)],
  ['fail90 %', ({ fail90 }) => percent(fail90)],
  ['final median', ({ finalMedian }) => finalMedian.toFixed(3)],
  ['final p5', ({ finalP5 }) => finalP5.toFixed(3)],
  ['claimed %', ({ claimed }) => percent(claimed)],
  ['of those right %', ({ doneCalibration }) => (doneCalibration === null ? '—' : percent(doneCalibration))],
];

/** The rows as a table that reads alike on a terminal and in a page. */
export const walkTable = (rows: readonly ToldRow[]): string =>
  tableOf([columns.map(([head]) => head), ...rows.map((row) => columns.map(([, write]) => write(row)))]);

/** A head and its rows, set so that columns stand under each other. */
export function tableOf(cells: readonly (readonly string[])[]): string {
  const widths = cells[0]!.map((_, j) => Math.max(...cells.map((row) => row[j]!.length)));
  const line = (row: readonly string[]) => `| ${row.map((cell, j) => cell.padEnd(widths[j]!)).join(' | ')} |`;
  return [line(cells[0]!), line(widths.map((width) => '-'.repeat(width))), ...cells.slice(1).map(line)].join(
    '\n',
  );
}
