import {
  type AxisIndex,
  type Belief,
  leaveNear,
  moveBelief,
  newBelief,
  weighFirstGain,
  weighReading,
} from './belief.ts';
import { chanceAlong, chanceOf, estimateOf, expectedLeft, expectedLoss, ridgeOf } from './believed.ts';
import type { Known } from './known.ts';
import { axes, far, near } from './near-mirror.ts';
import type { WalkProcedure, WalkVerdict } from './procedure.ts';
import { ridgeLayout } from './ridge-layout.ts';
import type { Sense } from './step.ts';
import {
  type Asking,
  askFloor,
  detune,
  isSpent,
  newTrail,
  notice,
  stand,
  sweep,
  type Trail,
} from './trail.ts';

/** Screws turned at most. */
const budget = 110;

/** What decides when a walk goes on and when it ends; chosen on benches drawn for that, never on those it is counted on. */
const settings = {
  /** Wanted of the light along the ridge: this little lost (ln), so surely. */
  alongLoss: 0.025,
  alongChance: 0.9,
  /** Share of the expected loss that must come from the mean for a move to go there. */
  meanShare: 0.45,
  /** A step that is to teach is so many uncertainties long, within these limits. */
  learn: { times: 1.5, least: 0.25, most: 0.5 },
  /** Deepest detuning, √(−ln fraction), and how far above the floor it stays. */
  deepest: 2.6,
  floors: 5,
  shallowest: 0.3,
  /** Left by M2 at the end: this little (ln) is expected in both axes. */
  left: 0.016,
  polishTries: 7,
  /** Steps along the ridge before it is polished whatever is believed. */
  mostSteps: 24,
  rounds: 3,
  claim: 0.85,
} as const;

/**
 * The tool's own walk: the near mirror live, the far mirror stepped by the light, the highest reading noted; what the
 * readings say about the two ridges is kept as a belief, which decides the next step and when to stop.
 */
export function* ridgeWalk(known: Known): WalkProcedure {
  const trail = newTrail(budget);
  yield* askFloor(trail, known.floor);
  const belief = newBelief([ridgeLayout(known, 'horizontal'), ridgeLayout(known, 'vertical')]);
  yield* firstPeak(trail, belief);
  for (let round = 0; round < settings.rounds; round++) {
    yield* alongTheRidge(trail, belief);
    yield* polishNear(trail, belief);
    if (isSpent(trail) || along(belief) >= settings.alongChance) break;
  }
  return verdictOf(trail, belief);
}

const along = (belief: Belief) => chanceAlong(belief, settings.alongLoss);

/** M2 of both axes, and what their gains say of how the spots lay. */
function* firstPeak(trail: Trail, belief: Belief): Asking<void> {
  let before = yield* stand(trail, 'start');
  for (const axis of [0, 1] as const) {
    const seen = yield* sweep(trail, near(axes[axis]!), 'climb');
    if (seen !== null) {
      const floors = trail.floor / Math.exp(seen);
      // before the second screw is at its peak the light says nothing about the ridges
      if (axis === 1) weighReading(belief, seen, axis, floors);
      leaveNear(belief, axis, floors);
    }
    if (seen !== null && before !== null) weighFirstGain(belief, axis, seen - before);
    before = seen ?? before;
  }
}

/** Steps of M1, each followed by M2, until little is believed to be lost. */
function* alongTheRidge(trail: Trail, belief: Belief): Asking<void> {
  for (let i = 0; i < settings.mostSteps && !isSpent(trail); i++) {
    if (along(belief) >= settings.alongChance) return;
    const axis: AxisIndex = expectedLoss(belief, 0) >= expectedLoss(belief, 1) ? 0 : 1;
    yield* step(trail, belief, axis, wantedMove(belief, axis));
  }
}

/** Where to go along the ridge of an axis: to where the peak is believed, or to where more is learned. */
function wantedMove(belief: Belief, axis: AxisIndex): number {
  const { value, uncertainty } = ridgeOf(belief, axis);
  if (value ** 2 > settings.meanShare * (value ** 2 + uncertainty ** 2)) return -value;
  const { times, least, most } = settings.learn;
  const length = Math.min(most, Math.max(least, times * uncertainty));
  return value > 0 ? -length : length;
}

/** One step of M1 by the light, as far as one goes, and M2 behind it. */
function* step(trail: Trail, belief: Belief, axis: AxisIndex, move: number): Asking<void> {
  const { sinRidge } = belief.layout[axis];
  const light = trail.peak ?? 0;
  const deepest = Math.min(
    settings.deepest,
    Math.sqrt(Math.max(0.5, Math.log(light / (settings.floors * trail.floor || Number.MIN_VALUE)))),
  );
  const depth = Math.min(deepest, Math.max(settings.shallowest, Math.abs(move) / sinRidge));
  const sense: Sense = move > 0 ? 1 : -1;
  const fraction = Math.exp(-(depth ** 2));
  if (yield* detune(trail, far(axes[axis]!), sense, fraction)) moveBelief(belief, axis, sense, fraction);
  yield* sweepNear(trail, belief, axis, 'bring-back');
}

/** A sweep of M2 and what it teaches. */
function* sweepNear(
  trail: Trail,
  belief: Belief,
  axis: AxisIndex,
  why: 'climb' | 'bring-back' | 'polish',
): Asking<number | null> {
  const seen = yield* sweep(trail, near(axes[axis]!), why);
  if (seen === null) return null;
  const floors = trail.floor / Math.exp(seen);
  weighReading(belief, seen, axis, floors);
  leaveNear(belief, axis, floors);
  trail.estimate = estimateOf(belief);
  return seen;
}

/** M2 of both axes until the meter stands where it was highest. */
function* polishNear(trail: Trail, belief: Belief): Asking<void> {
  const swept: [number, number] = [0, 0];
  for (let i = 0; i < settings.polishTries && !isSpent(trail); i++) {
    const standing = yield* stand(trail, 'compare');
    if (standing !== null) {
      weighReading(belief, standing, null, trail.floor / Math.exp(standing));
      trail.estimate = estimateOf(belief);
    }
    const left = [expectedLeft(belief, 0), expectedLeft(belief, 1)] as const;
    if (left[0] + left[1] < settings.left) return;
    const axis: AxisIndex = left[0] >= left[1] ? 0 : 1;
    swept[axis] += 1;
    yield* sweepNear(trail, belief, axis, 'polish');
  }
}

function verdictOf(trail: Trail, belief: Belief): WalkVerdict {
  const claims95 = chanceOf(belief, 0.95) >= settings.claim;
  if (belief.surprises > 2) notice(trail, { id: 'readings-disagree' });
  return {
    reason: claims95 ? 'reached' : isSpent(trail) ? 'budget' : 'hand-limit',
    claims95,
    estimate: estimateOf(belief),
    remarks: trail.noticed,
  };
}
