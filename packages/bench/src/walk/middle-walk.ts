import type { Known } from './known.ts';
import { axes, far, near, peakNearMirror } from './near-mirror.ts';
import type { WalkProcedure, WalkVerdict } from './procedure.ts';
import {
  type Asking,
  ask,
  askFloor,
  detune,
  isSpent,
  lightOf,
  newTrail,
  notice,
  stand,
  standsAt,
  sweep,
  type Trail,
} from './trail.ts';

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
  standsAt(trail, { kind: 'middle', rounds: -1 });
  yield* peakNearMirror(trail);
  return yield* toTheMiddle(trail);
}

/** Both mirrors to the middle of the plateau, from wherever there is light. */
export function* toTheMiddle(trail: Trail): Asking<WalkVerdict> {
  let before = Number.NEGATIVE_INFINITY;
  for (let round = 0; !isSpent(trail) && trail.peak !== null; round++) {
    standsAt(trail, { kind: 'middle', rounds: round });
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

/** Slack of a screw at most, and what it is turned by beyond that at least, turns. @source our assumption on mounts */
const slack = 0.05;
const leastTurn = 0.07;
/** From half of the light on one side of a peak to hardly any on the other, 1/e half-widths; a plateau is many times wider. */
const acrossAPeak = 0.83 + 1.3;
const lookReach = 0.35;
/** So much of the light is there on a plateau. @source a tenth: our choice, several deviations of a reading */
const staysOnPlateau = 0.9;

/**
 * Looks whether the peak is a plateau: M2 to where half of the light is left, then back by more than a peak is wide. Brings M2
 * back where it is none.
 *
 * @param nearPerTurn what a turn of M2 would move the light of a peak, 1/e half-widths
 */
export function* isPlateau(trail: Trail, nearPerTurn: number): Asking<boolean> {
  const before = trail.peak;
  if (before === null) return false;
  const screw = near('horizontal');
  if ((yield* detune(trail, screw, -1, halved)) === null) return false;
  const turns = slack + Math.max(leastTurn, acrossAPeak / nearPerTurn);
  const turned = yield* ask(trail, { kind: 'turn', screw, turns, reverses: true });
  const stands = turned.outcome === 'did' ? yield* stand(trail, 'compare') : null;
  const isFlat = stands !== null && Math.exp(stands) > staysOnPlateau * before;
  if (isFlat) notice(trail, { id: 'plateau' });
  else yield* sweep(trail, screw, 'bring-back', lookReach);
  return isFlat;
}
