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

/**
 * With one more reading. A gap empties it, and a clock that was set back: what was before it says nothing of now. A reading at
 * the upper end is no reading.
 */
export function withHeard(heard: ReadingWindow, { t, value, saturated }: Reading): ReadingWindow {
  if (value === null) return emptyWindow;
  if (saturated) return heard;
  const newest = heard.moments.at(-1);
  // readings of one page may come a little out of turn, never by so much
  const window = newest !== undefined && newest.t - t > memory ? emptyWindow : heard;
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
  const scatter = noiseOfWindow(window) ?? noiseBefore(noise, value, floor);
  return { t: last.t, value, sd: scatter * Math.sqrt(Math.PI / (2 * count)) };
}

/** Relative noise of a reading that nobody has said anything about. @source as benches are drawn: 1 to 3 %, our assumption */
const unknownNoise = 0.03;
/** A source that flickers does so in proportion to its light, a floor by some of itself: this many floors count as light. @source our choice, so that a floor's own noise of a quarter is 2.5 % of that */
export const floorsAsLight = 10;

/** Noise until the window tells it: what was heard in bright light before is none of dim light, which would pass for dark. */
function noiseBefore(noise: number | null, value: number, floor: number): number {
  if (noise === null) return unknownNoise * Math.abs(value);
  return Math.min(noise, unknownNoise * (Math.abs(value - floor) + floorsAsLight * Math.abs(floor)));
}

/** Fewer second differences say nothing of noise. */
const fewestDifferences = 12;
/** Φ⁻¹(3/4): half of all normal values lie within so many standard deviations. */
const halfWithin = 0.6745;

/**
 * Standard deviation of one moment, from second differences, so that a screw turned evenly is no noise, and by their median, so
 * that a stray is none either. Null while too little was heard.
 *
 * @source var(x₁ − 2x₂ + x₃) = 6σ² for independent readings; the standard deviation of the median of n of them is
 *   σ√(π/2n) for many, and a little less for few: H. Cramér, Mathematical Methods of Statistics (1946), 28.5; from memory
 */
export function noiseOfWindow({ moments }: ReadingWindow): number | null {
  const bends = moments
    .slice(2)
    .map(({ value }, i) => Math.abs(value - 2 * moments[i + 1]!.value + moments[i]!.value));
  return bends.length < fewestDifferences ? null : median(bends) / (halfWithin * Math.sqrt(6));
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
  const ofMoment = noiseOfWindow(window) ?? noiseBefore(noise, value, floor);
  const byNoise = 3 * ofMoment * Math.sqrt(Math.PI / Math.max(1, half));
  const lasts = shown.t - (last[0]?.t ?? shown.t);
  const isAtRest =
    last.length >= fewestAtRest &&
    lasts >= 0.8 * restsFor &&
    moved <= Math.max(byNoise, restShare * Math.abs(value - floor));
  return { t: shown.t, value, sd: ofMoment * Math.sqrt(Math.PI / (2 * values.length)), isAtRest };
}
