import type { WalkRow } from './walked.ts';

const percent = (share: number) => (100 * share).toFixed(1);

const columns: readonly (readonly [string, (row: WalkRow) => string])[] = [
  ['suite', ({ suite }) => suite],
  ['policy', ({ policy }) => policy],
  ['n', ({ n }) => `${n}`],
  ['ops stay', ({ opsToStay }) => (opsToStay === null ? '—' : opsToStay.toFixed(0))],
  ['ops first', ({ opsToFirst }) => (opsToFirst === null ? '—' : opsToFirst.toFixed(0))],
  ['ops at stop', ({ opsAtStop }) => opsAtStop.toFixed(0)],
  ['typed', ({ typed }) => typed.toFixed(0)],
  ['s', ({ seconds }) => seconds.toFixed(0)],
  ['fail95 %', ({ fail95 }) => percent(fail95)],
  ['fail90 %', ({ fail90 }) => percent(fail90)],
  ['final median', ({ finalMedian }) => finalMedian.toFixed(3)],
  ['final p5', ({ finalP5 }) => finalP5.toFixed(3)],
  ['claimed %', ({ claimed }) => percent(claimed)],
  ['of those right %', ({ doneCalibration }) => (doneCalibration === null ? '—' : percent(doneCalibration))],
];

/** The rows as a table that reads alike on a terminal and in a page. */
export function walkTable(rows: readonly WalkRow[]): string {
  const cells = [columns.map(([head]) => head), ...rows.map((row) => columns.map(([, write]) => write(row)))];
  const widths = columns.map((_, j) => Math.max(...cells.map((row) => row[j]!.length)));
  const line = (row: readonly string[]) => `| ${row.map((cell, j) => cell.padEnd(widths[j]!)).join(' | ')} |`;
  return [line(cells[0]!), line(widths.map((width) => '-'.repeat(width))), ...cells.slice(1).map(line)].join(
    '\n',
  );
}
