/**
 * How much of a walk is probably left, as an interval. The figures of each stage are what walks on benches drawn for it took
 * from there on (seeds 3000 to 3299, by the laws of docs/walk.md): nine of ten lay between.
 */
import type { WalkRemaining } from './procedure.ts';

/** Where a walk stands, as far as it tells what is left. */
export type Stage =
  /** M2 is peaked for the first time; so many sweeps are done. */
  | { readonly kind: 'first'; readonly sweeps: number }
  /** Along the ridge: steps of M1 to where the peak is believed, the doubt included, and what M2 will leave (ln). */
  | { readonly kind: 'along'; readonly ahead: number; readonly coarse: number }
  /** M2 for the last time: its first or second screw, sweeps of it so far, and what it leaves (ln). */
  | { readonly kind: 'polish'; readonly axis: 0 | 1; readonly tries: number; readonly coarse: number }
  /** As it is taught: axes behind this one (−1: only M2 is left), turned round so often (−1: M2 comes first). */
  | { readonly kind: 'climb'; readonly behind: number; readonly reversals: number }
  /** To the middle of a plateau: the rounds that are done (−1: M2 comes first). */
  | { readonly kind: 'middle'; readonly rounds: number };

type Interval = readonly [number, number];

/** What M2 leaves (ln) from which on a mount is coarse for the light, and very coarse. */
const coarseFrom = [0.025, 0.035] as const;
const coarseness = (left: number): 0 | 1 | 2 => (left < coarseFrom[0] ? 0 : left < coarseFrom[1] ? 1 : 2);

/** Longest by how coarse the mount is. */
const alongMost = [50, 60, 100] as const;
const polishMost = {
  first: [18, 21, 54],
  firstAgain: [16, 19, 52],
  second: [12, 13, 48],
  secondAgain: [12, 10, 46],
} as const;
/** By how often it was turned round, with no axis behind; each axis behind adds to it. */
const climb: readonly Interval[] = [
  [12, 24],
  [8, 20],
  [6, 16],
];
const eachAxis: Interval = [8, 12];
const lastPolish: Interval = [4, 14];
/** By the rounds that are done. */
const middle: readonly Interval[] = [
  [8, 12],
  [4, 8],
];

/** An unhurried hand takes this long for a step and its reading, s (the same simulated walks: 9.4 to 9.5). */
const secondsAStep = 9.5;

/** What is left from here on. */
export function remainingAt(stage: Stage): WalkRemaining {
  const steps = stepsAt(stage);
  return { steps, seconds: [secondsAStep * steps[0], secondsAStep * steps[1]] };
}

function stepsAt(stage: Stage): Interval {
  switch (stage.kind) {
    case 'first':
      return [Math.max(1, 11 - 2 * stage.sweeps), Math.max(1, 77 - 2 * stage.sweeps)];
    case 'along': {
      const coarse = coarseness(stage.coarse);
      const ahead = Math.min(stage.ahead, 6);
      return [Math.round(4 + 3 * ahead + 1.5 * coarse), Math.round(alongMost[coarse] + 2 * ahead)];
    }
    case 'polish': {
      const isAgain = stage.tries > 0;
      const most =
        stage.axis === 0
          ? polishMost[isAgain ? 'firstAgain' : 'first']
          : polishMost[isAgain ? 'secondAgain' : 'second'];
      return [stage.axis === 0 ? 4 : 2, most[coarseness(stage.coarse)]];
    }
    case 'climb': {
      if (stage.behind < 0) return lastPolish;
      const [least, most] = climb[Math.max(0, Math.min(2, stage.reversals))]!;
      const before: Interval = stage.reversals < 0 ? [2, 3] : [0, 0];
      return [least + eachAxis[0] * stage.behind + before[0], most + eachAxis[1] * stage.behind + before[1]];
    }
    case 'middle':
      return stage.rounds < 0 ? [10, 16] : middle[Math.min(1, stage.rounds)]!;
  }
}

/** The same once a step is done that took so long. */
export const lessOne = ({ steps, seconds }: WalkRemaining, took: number): WalkRemaining => ({
  steps: [Math.max(1, steps[0] - 1), Math.max(1, steps[1] - 1)],
  seconds: [Math.max(0, seconds[0] - took), Math.max(took, seconds[1] - took)],
});
