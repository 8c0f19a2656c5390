import { bringBack, mostUndone } from './bring-back.ts';
import type { Known } from './known.ts';
import { axes, far, near, peakNearMirror, polish } from './near-mirror.ts';
import type { WalkProcedure, WalkVerdict } from './procedure.ts';
import type { Sense, WalkAxis } from './step.ts';
import {
  type Asking,
  askFloor,
  detune,
  isSpent,
  newTrail,
  noEstimate,
  notice,
  standsAt,
  sweep,
  type Trail,
} from './trail.ts';

/** Steps of the far mirror, round by round: the light is let down to this fraction before the near mirror follows. */
const fractions = [0.1, Math.sqrt(0.1)] as const;

/** A peak that is higher by less than this (ln) has not gained (our own choice: one reading's scatter). */
const gain = 0.01;

/** Most screws that are turned. */
const budget = 160;

/**
 * The walk as a good teacher teaches it, which knows nothing of lengths: the near mirror live, the far mirror stepped by
 * the light, and the highest reading noted.
 *
 * @param first the way of the first step along each axis: nothing says which is the better one
 */
export function* taughtWalk(known: Pick<Known, 'floor'>, rounds: 1 | 2 = 1, first: Sense = 1): WalkProcedure {
  const trail = newTrail(budget);
  yield* askFloor(trail, known.floor);
  standsAt(trail, { kind: 'climb', behind: 2 * rounds - 1, reversals: -1 });
  yield* peakNearMirror(trail);
  const climbs = fractions.slice(0, rounds).flatMap((fraction) => axes.map((axis) => ({ axis, fraction })));
  for (const [i, { axis, fraction }] of climbs.entries())
    yield* climbAxis(trail, axis, fraction, { behind: climbs.length - 1 - i, first });
  return yield* finish(trail);
}

/**
 * Steps along one axis until the peak has been passed twice.
 *
 * @param behind how many axes are still to be climbed behind this one
 * @param first the way of the first step
 */
function* climbAxis(
  trail: Trail,
  axis: WalkAxis,
  fraction: number,
  { behind, first }: { readonly behind: number; readonly first: Sense },
): Asking<void> {
  let sense = first;
  let reversals = 0;
  let before = trail.peak === null ? null : Math.log(trail.peak);
  let unheard = 0;
  let idle = 0;
  while (!isSpent(trail) && unheard < 3 && trail.undone < mostUndone) {
    standsAt(trail, { kind: 'climb', behind, reversals });
    const left = yield* detune(trail, far(axis), sense, fraction);
    const seen =
      left === null
        ? yield* sweep(trail, near(axis), 'bring-back')
        : (yield* bringBack(trail, axis, left)).seen;
    if (left === null && ++idle === 2) notice(trail, { id: 'far-mirror-does-nothing' });
    unheard = left !== null && seen !== null ? 0 : unheard + 1;
    // the step that leads back over the peak is the last
    if (reversals === 2) return;
    if (seen === null || (before !== null && seen <= before + gain)) {
      sense = sense === 1 ? -1 : 1;
      reversals += 1;
    }
    before = seen ?? before;
  }
}

/** The last look at the near mirror. Without a model nothing can be said about what is missing along the far one. */
export function* finish(trail: Trail): Asking<WalkVerdict> {
  standsAt(trail, { kind: 'climb', behind: -1, reversals: 0 });
  yield* polish(trail);
  return {
    reason: trail.undone >= mostUndone ? 'something-else' : isSpent(trail) ? 'budget' : 'hand-limit',
    claims95: false,
    estimate: trail.estimate,
    remarks: trail.noticed,
  };
}

/** Goes on without the layout from wherever a walk by it has come to, because its lengths do not explain what is read. */
export function* asTaught(trail: Trail): Asking<WalkVerdict> {
  notice(trail, { id: 'goes-on-as-taught' });
  trail.estimate = noEstimate;
  for (const [i, axis] of axes.entries())
    yield* climbAxis(trail, axis, fractions[0], { behind: axes.length - 1 - i, first: 1 });
  return yield* finish(trail);
}
