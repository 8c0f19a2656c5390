import type { Reading } from './reading.ts';
import { noFigures, noiseOf, withReading } from './running-figures.ts';

/** What an instrument reads now, over a moment. */
export interface CurrentReading {
  /** Mean, in the instrument's unit. */
  readonly value: number;
  /** Standard uncertainty of that mean by the scatter of its readings; null where they are too few to tell. */
  readonly uncertainty: number | null;
  /** Readings it is the mean of. */
  readonly count: number;
  /** Some were at the upper end: the light may be more than this. */
  readonly saturated: boolean;
}

/** How long a moment is, ms. A slow instrument's last reading counts alone. */
export const momentLength = 1000;

/**
 * The mean of the last moment's readings, of those since the last gap. Slow changes do not count as scatter.
 *
 * @param readings oldest first
 * @returns null where nothing was read since the last gap
 */
export function currentReading(readings: readonly Reading[], length = momentLength): CurrentReading | null {
  const since = readings.slice(readings.findLastIndex(({ value }) => value === null) + 1);
  const newest = since.at(-1)?.t ?? 0;
  const now = since.filter(({ t }) => newest - t < length);
  if (now.length === 0) return null;
  const value = now.reduce((sum, one) => sum + (one.value ?? 0), 0) / now.length;
  // what one reading scatters is learnt from the whole stretch: a moment is short
  const noise = noiseOf(since.reduce(withReading, noFigures));
  return {
    value,
    uncertainty: noise === null ? null : noise / Math.sqrt(now.length),
    count: now.length,
    saturated: now.some(({ saturated }) => saturated),
  };
}
