import type { Reading } from '@coreward/bench';
import type { ReadingsBucket } from '@coreward/contract';

/** Readings a page holds at once; of faster instruments the window is shorter. */
const mostHeld = 20_000;

/**
 * A stretch of the bench book as readings, oldest first. A bucket with one reading is that reading; one with several is their
 * mean, at the time of the first. A gap in it comes last.
 */
export function readingsOfBuckets(buckets: readonly ReadingsBucket[]): readonly Reading[] {
  return buckets.flatMap(({ t, mean, gap, saturated }): readonly Reading[] => {
    const said = mean === null ? [] : [{ t, value: mean, saturated }];
    return gap ? [...said, { t, value: null, saturated: false }] : said;
  });
}

/** With what has come since; what lies more than `length` (ms) before the newest is let go. */
export function withRecent(
  held: readonly Reading[],
  news: readonly Reading[],
  length: number,
): readonly Reading[] {
  return latest([...held, ...news], length).slice(-mostHeld);
}

/** Those that lie no more than `length` (ms) before the newest: others may be held for longer than is told of. */
export function latest(readings: readonly Reading[], length: number): readonly Reading[] {
  const newest = readings.at(-1)?.t ?? 0;
  const first = readings.findIndex(({ t }) => t >= newest - length);
  return readings.slice(first);
}
