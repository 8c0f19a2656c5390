/**
 * What a reading is counted in, SI: a power, a photodiode's voltage or current, a figure that is only proportional to
 * the light (a camera's, a device's own counts), or steps brighter and dimmer that an eye has told, which are no measure.
 */
export const readingUnits = ['W', 'V', 'A', 'relative', 'step'] as const;
export type ReadingUnit = (typeof readingUnits)[number];

/** One reading of an instrument, in its unit. */
export interface Reading {
  /** When, ms since 1970-01-01T00:00Z; fractions count. */
  readonly t: number;
  /** Null marks a gap: from here on nothing was heard until the next reading. */
  readonly value: number | null;
  /** The instrument was at its upper end: the light may be more than this. */
  readonly saturated: boolean;
}
