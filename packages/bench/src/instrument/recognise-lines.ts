import { type LineField, lineFields, unitOfName } from './line-fields.ts';
import { columnSeparators, type LineFormat } from './line-format.ts';
import type { MeterUnit } from './meter-unit.ts';

/** Lines that are looked at; more say nothing new. */
const mostLines = 200;

interface Candidate {
  readonly format: LineFormat;
  readonly score: number;
}

/**
 * How a device's lines are probably to be read: the column that holds numbers, has a unit and varies, and is no clock or
 * counter. The owner sees it beside the lines and may choose otherwise. Null if no column has numbers in most lines.
 *
 * A guess by points, from common practice; no source.
 *
 * @param heading a line of column names, if there is one
 */
export function recogniseLines(sample: readonly string[], heading = ''): LineFormat | null {
  const lines = sample.filter((line) => line.trim() !== '').slice(0, mostLines);
  if (lines.length === 0) return null;
  const ways = columnSeparators.flatMap((separator) => [
    { separator, decimal: 'point' as const },
    // between columns and within numbers at once it would mean nothing
    ...(separator === 'comma' ? [] : [{ separator, decimal: 'comma' as const }]),
  ]);
  const candidates = ways.flatMap((way) => candidatesOf(lines, way, heading));
  const best = candidates.reduce<Candidate | null>(
    (found, one) => (found === null || one.score > found.score ? one : found),
    null,
  );
  return best?.format ?? null;
}

function candidatesOf(
  lines: readonly string[],
  way: Pick<LineFormat, 'separator' | 'decimal'>,
  heading: string,
): readonly Candidate[] {
  const names = lineFields(heading, way);
  const rows = lines.map((line) => lineFields(line, way));
  const width = Math.min(256, Math.max(...rows.map((row) => row.length)));
  // one comma between digits in each line is a decimal comma rather than two whole numbers
  const mayBeDecimal =
    way.separator === 'comma' && lines.every((line) => /^[^,.]*\d,\d[^,.]*$/u.test(line)) ? -3 : 0;
  return Array.from({ length: width }, (_, column) => column).flatMap((column) => {
    const fields = rows.map((row) => row[column]).filter((field) => field !== undefined);
    const named = fields.find(({ name }) => name !== null)?.name ?? names[column]?.text ?? '';
    const unit = unitOf(fields) ?? unitOfName(named);
    const score = scoreOf(fields, lines.length, named, unit !== null);
    if (score === null) return [];
    return [{ format: { ...way, column, unit: unit ?? 'counts' }, score: score + mayBeDecimal }];
  });
}

/** Null for a column that holds no number in more than a third of the lines. */
function scoreOf(fields: readonly LineField[], lines: number, name: string, hasUnit: boolean): number | null {
  const values = fields.map(({ value }) => value).filter((value) => value !== null);
  const heard = fields.filter(({ value, over }) => value !== null || over).length;
  if (values.length === 0 || heard < lines * (2 / 3)) return null;
  const share = heard / lines;
  const varies = new Set(values).size > 1;
  const isClock = !hasUnit && (countsUp(values) || clockName.test(name));
  return 4 * share + (hasUnit ? 3 : 0) + (varies ? 2 : 0) - (isClock ? 4 : 0);
}

/** What devices call a clock or a counter, a unit of time behind it or not. */
const clockName = /^(t|time|ms|millis|seconds?|n|no|i|index|count)(?:$|[_ ([])/iu;

/** Always upward, in steps of about one size, as readings rarely do. */
function countsUp(values: readonly number[]): boolean {
  if (values.length < 3) return false;
  const steps = values.slice(1).map((value, index) => value - (values[index] ?? 0));
  return Math.min(...steps) > 0 && Math.max(...steps) < 20 * Math.min(...steps);
}

/** The unit of most of them. */
function unitOf(fields: readonly LineField[]): MeterUnit | null {
  const counts = new Map<MeterUnit, number>();
  for (const { unit } of fields) if (unit !== null) counts.set(unit, (counts.get(unit) ?? 0) + 1);
  const [most] = [...counts].sort(([, a], [, b]) => b - a);
  return most?.[0] ?? null;
}
