/** The peak of one screw while a hand rocks it: what is held is judged on what the meter shows over a stretch, never on one reading. */
import type { Shown } from './reading-window.ts';

/** A place where the light was highest between two falls. */
export interface HeldPeak extends Shown {
  /** The light rose to it before it fell: it has two sides. Otherwise the turn began at it, and the other side is unseen. */
  readonly hasTwoSides: boolean;
}

/** Made anew with everything the meter shows by {@link withShown}. */
export interface PeakHold {
  /** Whether the light rises, as far as noise lets one tell; false behind a peak. */
  readonly rises: boolean;
  /** Highest since it rises, or lowest since it falls. */
  readonly turning: Shown;
  /** Lowest before `turning` on this way up. */
  readonly before: Shown;
  readonly lowest: Shown;
  /** The last two, newest last: what was higher before them has drifted away. */
  readonly peaks: readonly HeldPeak[];
}

/** A change counts when it is so many standard deviations of what is shown, and this share of the light. */
const [surely, visibly] = [8, 0.05] as const;
/** Back at a peak means within this share of it, or so many standard deviations. @source our choice: a hand sets 1 to 2 % */
const [nearShare, nearDeviations] = [0.02, 4] as const;
/** Passes that are remembered besides the one going on. */
const passes = 2;

export const holdFrom = (shown: Shown): PeakHold => ({
  rises: true,
  turning: shown,
  before: shown,
  lowest: shown,
  peaks: [],
});

/** How far the light must leave `from` before it has turned: noise alone does not go so far in minutes. */
export const clearlyOff = (from: Shown, now: Shown, floor: number): number =>
  Math.max(surely * Math.max(from.sd, now.sd), visibly * (Math.max(from.value, now.value) - floor));

/**
 * With what the meter shows now.
 *
 * @param floor what it shows without light; 0 if nobody knows
 */
export function withShown(hold: PeakHold, now: Shown, floor: number): PeakHold {
  const { turning } = hold;
  if (!hold.rises) {
    if (now.value <= turning.value) return { ...hold, turning: now };
    if (now.value - turning.value <= clearlyOff(turning, now, floor)) return hold;
    return { ...hold, rises: true, turning: now, before: turning, lowest: turning };
  }
  const lowest = now.value < hold.lowest.value ? now : hold.lowest;
  if (now.value >= turning.value) return { ...hold, turning: now, before: hold.lowest, lowest };
  if (turning.value - now.value <= clearlyOff(turning, now, floor)) return { ...hold, lowest };
  const hasTwoSides = turning.value - hold.before.value > clearlyOff(turning, hold.before, floor);
  const peaks = [...hold.peaks, { ...turning, hasTwoSides }].slice(-passes);
  return { rises: false, turning: now, before: now, lowest: now, peaks };
}

/** The highest of the last two passes and of the one going on. */
export function heldPeak({ rises, turning, peaks }: PeakHold): Shown {
  return [...peaks, ...(rises ? [turning] : [])].reduce((best, one) => (one.value > best.value ? one : best));
}

/** Whether a peak with both its sides was passed. */
export const isPeakKnown = ({ peaks }: PeakHold): boolean => peaks.some(({ hasTwoSides }) => hasTwoSides);

/**
 * Whether the meter shows the held peak again, as nearly as can be told.
 *
 * @param sd standard deviation of what is shown at the peak, by noise alone: a hand that moves is none
 */
export function isBackAtPeak(hold: PeakHold, now: Shown, floor: number, sd: number): boolean {
  const { value } = heldPeak(hold);
  return value - now.value <= Math.max(nearDeviations * sd, nearShare * (value - floor));
}
