import { far, near } from './near-mirror.ts';
import type { WalkAxis } from './step.ts';
import { type Asking, isSpent, notice, sweepAnswered, type Trail } from './trail.ts';

/** How far M2 is searched either side where the light did not come back, turns. @source a quarter turn and what a step of M1 by the light may ask for besides: our choice */
const searchReach = 0.3;

/** A step of M1 that was undone so often in one walk has another cause than a hand. */
export const mostUndone = 3;

/** What became of a step. */
export interface BroughtBack {
  /** ln of the highest light seen at last; null: nothing was told. */
  readonly seen: number | null;
  /** The light did not come back by M2: M1 was turned back, and the step counts for nothing. */
  readonly isUndone: boolean;
}

/**
 * Lets M2 follow a step of M1. A light that does not come back is a sign of a wrong screw, a wrong way or too short a search:
 * it is said, M2 is searched farther, and if that does not help, M1 is peaked itself, which undoes the step.
 *
 * @param fraction of the light before the step that the step has left
 */
export function* bringBack(trail: Trail, axis: WalkAxis, fraction: number): Asking<BroughtBack> {
  const before = trail.peak;
  const least = leastBack(trail, fraction);
  const isBack = (ln: number | null): boolean => ln !== null && Math.exp(ln) > least;
  const follow = yield* sweepAnswered(trail, near(axis), 'bring-back');
  // what was skipped, or told to somebody who has no reading yet, is no sign of anything
  if (before === null || follow.outcome === 'skipped' || isBack(follow.ln))
    return { seen: follow.ln, isUndone: false };
  trail.peak = before;
  notice(trail, { id: 'light-not-back' });
  if (isSpent(trail)) return { seen: null, isUndone: false };
  const farther = yield* sweepAnswered(trail, near(axis), 'bring-back', searchReach);
  if (isBack(farther.ln)) return { seen: farther.ln, isUndone: false };
  trail.peak = before;
  trail.undone += 1;
  notice(trail, { id: 'step-undone' });
  if (isSpent(trail)) return { seen: null, isUndone: true };
  const { ln } = yield* sweepAnswered(trail, far(axis), 'undo');
  return { seen: ln, isUndone: true };
}

/**
 * The light that M2 must find at least: if it follows the right screw it gains nearly all of it back, and a wrong one hardly
 * any. After a shallow step, or near the floor where a reading is mostly noise, nothing can be told.
 */
function leastBack({ peak, floor }: Trail, fraction: number): number {
  if (peak === null || peak < clearOfFloor * floor || fraction > mostMissing) return 0;
  return gainsBack * fraction * peak;
}

/** M2 that brings light back gains this factor at least. @source our choice: the benches of reference/walk gain twice or more */
export const gainsBack = 1.6;
/** A step that leaves more than this share of the light is no sign. */
export const mostMissing = 0.3;
/** So many floors above it, readings can be trusted to a few per cent. */
const clearOfFloor = 20;
