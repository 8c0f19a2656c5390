import type { Reading } from './reading.ts';

/** So many readings make a floor; more would make whoever holds the card wait. */
export const readingsForFloor = 20;

/** What is read with the beam blocked. */
export interface BlockedFloor {
  readonly floor: number;
  /** How many readings it is the mean of. */
  readonly count: number;
}

/**
 * The mean of the last readings, of those since the last gap. Null if there is none, or if the last is at the upper end: then
 * the beam is not blocked.
 */
export function floorOf(readings: readonly Reading[]): BlockedFloor | null {
  const since = readings.slice(readings.findLastIndex(({ value }) => value === null) + 1);
  if (since.at(-1)?.saturated === true) return null;
  const values = since.slice(-readingsForFloor).flatMap(({ value }) => value ?? []);
  if (values.length === 0) return null;
  return { floor: values.reduce((sum, value) => sum + value, 0) / values.length, count: values.length };
}
