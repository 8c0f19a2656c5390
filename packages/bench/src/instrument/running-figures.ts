import type { Reading } from './reading.ts';

/** How fast and how noisy readings come, brought up to date with each; in their own unit. */
export interface RunningFigures {
  readonly last: Reading | null;
  /** Steps from one reading to the next that were counted, as far as they still matter. */
  readonly steps: number;
  /** Mean time of a step, ms. */
  readonly interval: number;
  /** Mean square of a step's change. */
  readonly square: number;
}

/** Nothing heard yet. */
export const noFigures: RunningFigures = { last: null, steps: 0, interval: 0, square: 0 };

/** Older steps fade with this many. */
const memory = 64;
/** Fewer say nothing of the noise. */
const fewest = 8;

/** With one more reading. Across a gap no step is counted; a reading at the upper end counts for the rate alone. */
export function withReading(before: RunningFigures, reading: Reading): RunningFigures {
  const { last } = before;
  if (last === null || last.value === null || reading.value === null) return { ...before, last: reading };
  const elapsed = reading.t - last.t;
  if (!(elapsed >= 0)) return { ...before, last: reading };
  const weight = 1 / Math.min(before.steps + 1, memory);
  const change = reading.saturated || last.saturated ? null : (reading.value - last.value) ** 2;
  return {
    last: reading,
    steps: before.steps + 1,
    interval: before.interval + weight * (elapsed - before.interval),
    square: change === null ? before.square : before.square + weight * (change - before.square),
  };
}

/** Readings a second; null before there are two, or where several came at once. */
export const rateOf = ({ steps, interval }: RunningFigures): number | null =>
  steps === 0 || interval <= 0 ? null : 1000 / interval;

/**
 * Standard deviation of a single reading. Taken from one reading to the next, so that a hand that turns a screw slowly
 * does not count as noise; for independent readings.
 *
 * @source J. von Neumann et al., Ann. Math. Stat. 12, 153 (1941), the mean square successive difference is 2σ²; from memory
 */
export const noiseOf = ({ steps, square }: RunningFigures): number | null =>
  steps < fewest ? null : Math.sqrt(square / 2);
