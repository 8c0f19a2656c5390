import type { Known } from './known.ts';
import { axes, far, near, peakNearMirror } from './near-mirror.ts';
import type { WalkProcedure, WalkVerdict } from './procedure.ts';
import { type Asking, ask, askFloor, isSpent, lightOf, newTrail, type Trail } from './trail.ts';

/** Screws turned at most. */
const budget = 60;
/** Both mirrors are put in the middle at least so often, and on until a round brings less than this (ln). */
const leastRounds = 2;
const worthAnotherRound = 0.03;
const halved = 0.5;

/**
 * The walk for a plateau, where a fibre of many modes takes the same light over a wide range and no peak can be found:
 * each screw is turned to both sides until the light has halved, and stands in the middle. Once per mirror and axis, the
 * near mirror first, then all of it again while that brings more. It cannot say how much is missing, for a plateau has no slope to tell by.
 */
export function* middleWalk(known: Pick<Known, 'floor'>): WalkProcedure {
  const trail = newTrail(budget);
  yield* askFloor(trail, known.floor);
  yield* peakNearMirror(trail);
  return yield* toTheMiddle(trail);
}

/** Both mirrors to the middle of the plateau, from wherever there is light. */
export function* toTheMiddle(trail: Trail): Asking<WalkVerdict> {
  let before = Number.NEGATIVE_INFINITY;
  for (let round = 0; !isSpent(trail) && trail.peak !== null; round++) {
    for (const screw of [...axes.map(near), ...axes.map(far)]) {
      if (isSpent(trail)) break;
      const target = trail.floor + halved * trail.peak;
      const answer = yield* ask(trail, { kind: 'middle', screw, target });
      if (answer.outcome === 'did' && answer.standing !== undefined) {
        trail.peak = Math.max(trail.peak, lightOf(trail, answer.standing));
      }
    }
    const now = Math.log(trail.peak);
    if (round + 1 >= leastRounds && now - before < worthAnotherRound) break;
    before = now;
  }
  return {
    reason: isSpent(trail) ? 'budget' : 'hand-limit',
    claims95: false,
    estimate: trail.estimate,
    remarks: trail.noticed,
  };
}
