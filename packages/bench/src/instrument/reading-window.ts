/** The last moments of a meter that a hand is turning against, in short: what it shows now, how surely, and whether it rests. */
import { median } from '@coreward/optics';
import type { Reading } from './reading.ts';

/** What was read at one time; of a fast instrument the median of a thirtieth of a second, which no eye and no hand resolve. */
export interface Moment {
  /** ms since 1970. */
  readonly t: number;
  readonly value: number;
}

/** Made anew with every reading by {@link withHeard}. */
export interface ReadingWindow {
  /** The newest is the last. */
  readonly moments: readonly Moment[];
  /** Readings that came since the last moment, too soon to be one. */
  readonly early: readonly number[];
}

/** Nothing heard yet. */
export const emptyWindow: ReadingWindow = { moments: [], early: [] };

/** Least time from one moment to the next, ms. */
const apart = 33;
/** Moments are held for so long, ms, and at least so many of them. */
const [memory, fewest] = [2_000, 40] as const;

/** Whether the clock was set back from one reading to the next, ms: those of one page may come a little out of turn, never by so much. */
export const isSetBack = (from: number, to: number): boolean => from - to > memory;

/**
 * With one more reading. A gap empties it, and a clock that was set back: what was before it says nothing of now. A reading at
 * the upper end is no reading.
 */
export function withHeard(heard: ReadingWindow, { t, value, saturated }: Reading): ReadingWindow {
  if (value === null) return emptyWindow;
  if (saturated) return heard;
  const newest = heard.moments.at(-1);
  const window = newest !== undefined && isSetBack(newest.t, t) ? emptyWindow : heard;
  const early = [...window.early, value];
  const last = window.moments.at(-1);
  if (last !== undefined && t - last.t < apart) return { ...window, early };
  const first = window.moments.findIndex((moment) => t - moment.t <= memory);
  const oldest = Math.max(0, window.moments.length + 1 - fewest);
  const from = first === -1 ? oldest : Math.min(first, oldest);
  return { moments: [...window.moments.slice(from), { t, value: median(early) }], early: [] };
}

/** What a meter shows, over a stretch long enough that a stray reading does not count. */
export interface Shown {
  readonly t: number;
  readonly value: number;
  /** Standard deviation of `value` by noise alone. */
  readonly sd: number;
}

/** What is shown is the median of so long a stretch, ms, and of at least so many moments. */
const [stretch, fewestShown] = [300, 3] as const;

/**
 * What the meter shows now: a single stray reading never moves it. Null until three moments were heard.
 *
 * @param noise standard deviation of a single reading in whatever light it was heard, for as long as the window itself cannot
 *   tell; null: not known
 * @param floor what it shows without light; 0 if nobody knows
 */
export function shownNow(window: ReadingWindow, noise: number | null, floor: number): Shown | null {
  const { moments } = window;
  const last = moments.at(-1);
  if (last === undefined || moments.length < fewestShown) return null;
  const within = moments.filter(({ t }) => last.t - t <= stretch).length;
  const count = Math.max(fewestShown, within - (1 - (within % 2)));
  const value = median(moments.slice(-count).map((moment) => moment.value));
  const scatter = noiseOfMoment(window, noise, value, floor);
  return { t: last.t, value, sd: scatter * Math.sqrt(Math.PI / (2 * count)) };
}

/** Relative noise of a reading that nobody has said anything about. @source as benches are drawn: 1 to 3 %, our assumption */
const unknownNoise = 0.03;
/** A source that flickers does so in proportion to its light, a floor by some of itself: this many floors count as light. @source our choice, so that a floor's own noise of a quarter is 2.5 % of that */
export const floorsAsLight = 10;

/** Noise of one moment: what the window tells of it, as soon as it tells anything. */
function noiseOfMoment(window: ReadingWindow, noise: number | null, value: number, floor: number): number {
  const bends = bendsOf(window);
  if (bends.length >= fewestDifferences) return noiseOfBends(bends);
  const before = noiseBefore(noise, value, floor);
  return bends.length < 3 ? before : Math.max(before, noiseOfBends(bends));
}

/**
 * Noise until the window tells it: what was heard in bright light before is none of dim light, which would pass for dark; and a
 * floor's own noise is more than its share of a reading, or it would pass for light that rises.
 */
function noiseBefore(noise: number | null, value: number, floor: number): number {
  const usual = unknownNoise * (Math.abs(value - floor) + floorsAsLight * Math.abs(floor));
  return noise === null ? usual : Math.min(noise, usual);
}

/** Fewer second differences say nothing of noise. */
const fewestDifferences = 12;
/** Of bends so many are believed, the smallest: a stray makes three of the largest. @source our choice */
const believed = 0.75;
/** Mean of the smallest three quarters of |x| where x is normal, standard deviations: √(2/π)(1 − exp(−q²/2))/0.75 with q = Φ⁻¹(7/8). */
const meanOfBelieved = 0.5149;

/**
 * Standard deviation of one moment, from second differences, so that a screw turned evenly is no noise, and without the largest
 * of them, so that a stray is none either. It is a mean, for of a meter whose last digit is all its noise half the differences
 * may be nothing. Null while too little was heard.
 *
 * @source var(x₁ − 2x₂ + x₃) = 6σ² for independent readings; the standard deviation of the median of n of them is
 *   σ√(π/2n) for many, and a little less for few: H. Cramér, Mathematical Methods of Statistics (1946), 28.5; from memory
 */
export function noiseOfWindow(window: ReadingWindow): number | null {
  const bends = bendsOf(window);
  return bends.length < fewestDifferences ? null : noiseOfBends(bends);
}

const bendsOf = ({ moments }: ReadingWindow): readonly number[] =>
  moments.slice(2).map(({ value }, i) => Math.abs(value - 2 * moments[i + 1]!.value + moments[i]!.value));

/** The same of the second differences themselves, without their signs. */
export function noiseOfBends(bends: readonly number[]): number {
  const kept = bends.toSorted((a, b) => a - b).slice(0, Math.ceil(believed * bends.length));
  return kept.reduce((sum, bend) => sum + bend, 0) / (kept.length * meanOfBelieved * Math.sqrt(6));
}

/** So nearly alike are two steps of one digit, relative: what is left is rounding in the last bits. */
const alike = 1e-6;

/** The last digit of a meter, which went up by one and down by one; 0 where none was seen to. */
export function lastDigitOf({ moments }: ReadingWindow): number {
  const steps = moments
    .slice(1)
    .map(({ value }, i) => value - moments[i]!.value)
    .filter((step) => step !== 0);
  const back = steps.filter((step, i) => i > 0 && Math.abs(step + steps[i - 1]!) < alike * Math.abs(step));
  return back.length === 0 ? 0 : Math.min(...back.map(Math.abs));
}

/** A meter rests when for so long, ms, and so many moments nothing but noise has moved it. */
const [restsFor, fewestAtRest] = [1_500, 6] as const;
/** This share of the light is rest whatever the noise. @source our choice: a third of what a hand can set */
const restShare = 0.01;

/** A meter as it stands. */
export interface Standing extends Shown {
  /** Whether it rests; if not, `value` is only what it shows on the way. */
  readonly isAtRest: boolean;
}

/**
 * What the meter shows with the hands off: the median of the last seconds, and whether it rests.
 *
 * @param noise as of {@link shownNow}
 * @param floor what it shows without light; 0 if nobody knows
 */
export function standingNow(window: ReadingWindow, noise: number | null, floor: number): Standing | null {
  const shown = shownNow(window, noise, floor);
  if (shown === null) return null;
  const { moments } = window;
  const resting = moments.filter(({ t }) => shown.t - t <= restsFor);
  const last = resting.length >= fewestAtRest ? resting : moments.slice(-fewestAtRest);
  const values = last.map((moment) => moment.value);
  const value = median(values);
  const half = Math.floor(values.length / 2);
  const moved = Math.abs(median(values.slice(0, half)) - median(values.slice(-half)));
  const ofMoment = noiseOfMoment(window, noise, value, floor);
  const byNoise = 3 * ofMoment * Math.sqrt(Math.PI / Math.max(1, half));
  const lasts = shown.t - (last[0]?.t ?? shown.t);
  const isAtRest =
    last.length >= fewestAtRest &&
    lasts >= 0.8 * restsFor &&
    moved <= Math.max(byNoise, restShare * Math.abs(value - floor), (1 + alike) * lastDigitOf(window));
  return { t: shown.t, value, sd: ofMoment * Math.sqrt(Math.PI / (2 * values.length)), isAtRest };
}
