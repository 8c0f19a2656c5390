import type { Reading, ReadingUnit } from './reading.ts';
import { readingWords } from './reading-words.ts';

/** Readings of a short time together, as a station sums them up. */
export interface TraceBucket {
  /** Of the first reading in it, ms. */
  readonly t: number;
  readonly count: number;
  /** Null where there is nothing but a gap. */
  readonly min: number | null;
  readonly max: number | null;
  readonly mean: number | null;
  readonly gap: boolean;
  readonly saturated: boolean;
}

/** Readings as they come, each a bucket of its own. */
export const bucketsOfReadings = (readings: readonly Reading[]): readonly TraceBucket[] =>
  readings.map(({ t, value, saturated }) => ({
    t,
    count: value === null ? 0 : 1,
    min: value,
    max: value,
    mean: value,
    gap: value === null,
    saturated,
  }));

/** What is drawn of readings over time: columns of one length. A null breaks the line. */
export interface TraceColumns {
  /** ms, rising. */
  readonly times: readonly number[];
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
  readonly middle: readonly (number | null)[];
  /** The reading where the instrument was at its upper end; otherwise null. */
  readonly full: readonly (number | null)[];
}

/** A gap breaks the line behind the readings that are in the same bucket with it. */
export function traceColumns(buckets: readonly TraceBucket[]): TraceColumns {
  const broken = buckets.flatMap((bucket): readonly TraceBucket[] =>
    bucket.gap && bucket.mean !== null ? [bucket, { ...bucket, ...nothing }] : [bucket],
  );
  return {
    times: broken.map(({ t }) => t),
    low: broken.map(({ min }) => min),
    high: broken.map(({ max }) => max),
    middle: broken.map(({ mean }) => mean),
    full: broken.map(({ saturated, max }) => (saturated ? max : null)),
  };
}

const nothing = { count: 0, min: null, max: null, mean: null, saturated: false };

/** A trace in words, for whoever does not see it. */
export function traceWords(buckets: readonly TraceBucket[], unit: ReadingUnit): string {
  const count = buckets.reduce((sum, bucket) => sum + bucket.count, 0);
  const gaps = buckets.filter(({ gap }) => gap).length;
  const full = buckets.filter(({ saturated }) => saturated).length;
  if (count === 0) return gaps === 0 ? 'No readings in this time.' : 'Nothing but a gap in this time.';
  // spread over an argument list, a million would be too many
  const lowest = buckets.reduce((low, { min }) => Math.min(low, min ?? low), Number.POSITIVE_INFINITY);
  const highest = buckets.reduce((high, { max }) => Math.max(high, max ?? high), Number.NEGATIVE_INFINITY);
  const sum = buckets.reduce((all, { mean, count: own }) => all + (mean ?? 0) * own, 0);
  const range =
    unit === 'step'
      ? `from ${readingWords(lowest, unit)} to ${readingWords(highest, unit)}`
      : `lowest ${readingWords(lowest, unit)}, mean ${readingWords(sum / count, unit)}, highest ${readingWords(highest, unit)}`;
  return [
    `${grouped(count)} ${count === 1 ? 'reading' : 'readings'}, ${range}`,
    ...(gaps === 0 ? [] : [`${gaps === 1 ? 'a gap' : `gaps in ${gaps} places`}`]),
    ...(full === 0 ? [] : [`at its upper end in ${full === 1 ? 'one place' : `${full} places`}`]),
  ]
    .join('; ')
    .concat('.');
}

/** Digits in threes, a blank between: `1 000 000`. */
const grouped = (count: number): string => String(count).replace(/\B(?=(?:\d{3})+$)/gu, ' ');
