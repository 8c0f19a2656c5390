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
  /** Lowest before `turning` on this way up; on a way down, where its fall was told last. */
  readonly before: Shown;
  /** When it had fallen to half of that, ms; null: it has not. */
  readonly fellOn: number | null;
  readonly lowest: Shown;
  /** The last two that are as high as the highest, newest last: what was a little higher before them has drifted away. */
  readonly peaks: readonly HeldPeak[];
  /** How often a peak with both its sides was passed, since none was much higher. */
  readonly passes: number;
}

/** A change counts when it is so many standard deviations of what is shown, and this share of the light. */
const [surely, visibly] = [8, 0.05] as const;
/**
 * Back at a peak means within this share of it and so many standard deviations. A hand that passes it again and again turns by
 * steps that are no finer, and what is near enough grows with each pass.
 * @source our choice: a hand sets 1 to 2 %; a screw that is clicked misses the top by half a click at most
 */
const [nearShares, nearDeviations] = [[0.02, 0.02, 0.06, 0.08, 0.12, 0.2, 0.25], 2] as const;
/** Light is above a peak by so many, or by what is visible. */
const aboveDeviations = 4;
/** What has less than this share of the highest light is a hump on its flank, and no peak. @source our choice: noise and a source's drift take far less from one pass to the next */
const humpShare = 0.7;
/** Peaks that are remembered besides what is being climbed. */
const remembered = 2;

/** A peak that begins at what is shown now. */
export const holdFrom = (shown: Shown): PeakHold => ({
  rises: true,
  turning: shown,
  before: shown,
  fellOn: null,
  lowest: shown,
  peaks: [],
  passes: 0,
});

/** What a floor itself wanders, as a share of it. @source our choice */
export const floorWanders = 0.15;

/** How far the light must leave `from` before it has turned: noise alone does not go so far in minutes. */
export const clearlyOff = (from: Shown, now: Shown, floor: number): number =>
  Math.max(
    surely * Math.max(from.sd, now.sd),
    visibly * (Math.max(from.value, now.value) - floor),
    floorWanders * floor,
  );

/**
 * With what the meter shows now.
 *
 * @param floor what it shows without light; 0 if nobody knows
 */
export function withShown(hold: PeakHold, now: Shown, floor: number): PeakHold {
  const { turning } = hold;
  if (!hold.rises) {
    if (now.value <= turning.value) {
      const { before } = hold;
      const isHalved =
        now.value - floor < (before.value - floor) / 2 &&
        before.value - now.value > clearlyOff(before, now, floor);
      return isHalved ? { ...hold, turning: now, before: now, fellOn: now.t } : { ...hold, turning: now };
    }
    if (now.value - turning.value <= clearlyOff(turning, now, floor)) return hold;
    return { ...hold, rises: true, turning: now, before: turning, fellOn: null, lowest: turning };
  }
  const lowest = now.value < hold.lowest.value ? now : hold.lowest;
  if (now.value >= turning.value) return { ...hold, turning: now, before: hold.lowest, lowest };
  if (turning.value - now.value <= clearlyOff(turning, now, floor)) return { ...hold, lowest };
  const hasTwoSides = turning.value - hold.before.value > clearlyOff(turning, hold.before, floor);
  const passed = withPeak(hold, { ...turning, hasTwoSides }, floor);
  return { rises: false, turning: now, before: now, fellOn: null, lowest: now, ...passed };
}

/** With a place that was fallen from: a hump never takes the place of a peak. */
function withPeak(hold: PeakHold, peak: HeldPeak, floor: number): Pick<PeakHold, 'peaks' | 'passes'> {
  const isHump = (one: Shown, beside: Shown): boolean =>
    one.value - floor < humpShare * (beside.value - floor);
  if (hold.peaks.some((one) => isHump(peak, one))) return { peaks: hold.peaks, passes: hold.passes };
  const alike = hold.peaks.filter((one) => !isHump(one, peak));
  const before = alike.length === 0 ? 0 : hold.passes;
  return { peaks: [...alike, peak].slice(-remembered), passes: before + (peak.hasTwoSides ? 1 : 0) };
}

const higher = (one: Shown, other: Shown): Shown => (other.value > one.value ? other : one);

/** The highest of the last two passes and of the one going on. */
export const heldPeak = ({ rises, turning, peaks }: PeakHold): Shown =>
  rises ? peaks.reduce<Shown>(higher, turning) : peaks.reduce<Shown>(higher, peaks[0] ?? turning);

/** Whether the light rises clearly above every place it has fallen from: what it comes to nobody knows. */
export function isAbovePeaks({ rises, turning, peaks }: PeakHold, floor: number, sd: number): boolean {
  const clear = Math.max(aboveDeviations * sd, visibly * (turning.value - floor));
  return rises && peaks.every(({ value }) => turning.value - value > clear);
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
  const share = nearShares[Math.min(hold.passes, nearShares.length - 1)]!;
  return value - now.value <= nearDeviations * sd + share * (value - floor);
}
