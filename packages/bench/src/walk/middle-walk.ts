import type { Known } from './known.ts';
import { axes, far, near } from './near-mirror.ts';
import type { WalkProcedure } from './procedure.ts';
import { ask, askFloor, isSpent, lightOf, newTrail, sweep } from './trail.ts';

/** Screws turned at most. */
const budget = 40;
/** Both mirrors are put in the middle so often. */
const rounds = 2;
const halved = 0.5;

/**
 * The walk for a plateau, where a fibre of many modes takes the same light over a wide range and no peak can be found:
 * each screw is turned to both sides until the light has halved, and stands in the middle. Once per mirror and axis, the
 * near mirror first, then all of it again. It cannot say how much is missing, for a plateau has no slope to tell by.
 */
export function* middleWalk(known: Pick<Known, 'floor'>): WalkProcedure {
  const trail = newTrail(budget);
  yield* askFloor(trail, known.floor);
  for (const axis of axes) yield* sweep(trail, near(axis), 'climb');
  for (let round = 0; round < rounds; round++) {
    for (const screw of [...axes.map(near), ...axes.map(far)]) {
      if (isSpent(trail) || trail.peak === null) continue;
      const target = trail.floor + halved * trail.peak;
      const answer = yield* ask(trail, { kind: 'middle', screw, target });
      if (answer.outcome === 'did' && answer.standing !== undefined) {
        trail.peak = Math.max(trail.peak, lightOf(trail, answer.standing));
      }
    }
  }
  return {
    reason: isSpent(trail) ? 'budget' : 'hand-limit',
    claims95: false,
    estimate: trail.estimate,
    remarks: trail.noticed,
  };
}
