import { beginRow, moveAlong, weighHighest } from './axis-belief.ts';
import {
  type AxisIndex,
  type Belief,
  chanceBelow,
  estimateOf,
  lossChances,
  newBelief,
  type RidgeFigures,
  ridgeFigures,
} from './belief.ts';
import { bringBack, mostUndone } from './bring-back.ts';
import type { Known } from './known.ts';
import { compared, leftBySweep, quantileLeft } from './left-behind.ts';
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
export const settings = {
  /** Wanted of the light along the ridges: no more lost (ln) than what M2 will leave lets over of this, so surely. */
  allLoss: 0.047,
  leftShare: 0.7,
  leastLoss: 0.012,
  mostLoss: 0.03,
  alongChance: 0.93,
  /** After so few steps a good start is believed a little sooner. */
  fewSteps: 3,
  earlyChance: 0.83,
  /** Share of the expected loss that must come from the mean for a move to go there. */
  meanShare: 0.45,
  /** A step that is to teach is so many uncertainties long, within these limits. */
  learnTimes: 1.5,
  learnLeast: 0.25,
  learnMost: 0.5,
  /** Deepest detuning, √(−ln fraction), clear of a weak wide foot under the peak; and how many floors stay. */
  deepest: 2.1,
  floors: 5,
  shallowest: 0.3,
  /** Left by M2 at the end: this little (ln) is expected in one axis. */
  left: 0.008,
  polishTries: 7,
  /** or so many throws of a hand are worse, and more with every try. */
  content: 0.35,
  contentMore: 0.1,
  /** A first sweep near the floor that may have left more than this (ln) is made again. */
  leftInTheDark: 0.05,
  /** Steps along the ridge before it is polished whatever is believed. */
  mostSteps: 30,
  rounds: 3,
  claim: 0.85,
};

/** A reading fits badly when its likelihood (a density of ln) is below this. */
const surprising = 0.3;

/** What this walk keeps in mind besides its trail. */
interface Mind extends Belief {
  /** ln of the highest light when each screw of M2 was swept last; null: not known. */
  readonly highest: [number | null, number | null];
  /** The axis whose row of readings is going on. */
  row: AxisIndex | null;
  /** Steps of M1 so far. */
  steps: number;
  surprises: number;
}

/**
 * The tool's own walk: the near mirror live, the far mirror stepped by the light, the highest reading noted; what the
 * readings say about the two ridges is kept as a belief, which decides the next step and when to stop.
 */
export function* ridgeWalk(known: Known): WalkProcedure {
  const trail = newTrail(budget);
  yield* askFloor(trail, known.floor);
  const mind = yield* firstPeak(trail, known);
  for (let round = 0; round < settings.rounds; round++) {
    yield* alongTheRidge(trail, mind);
    yield* polishNear(trail, mind);
    if (isSpent(trail) || sureAlong(mind) || trail.undone >= mostUndone) break;
  }
  return verdictOf(trail, mind);
}

/** Whether little enough is lost along the ridges that with what M2 will leave 95 % are in. */
function sureAlong(mind: Mind): boolean {
  const willBeLeft = mind.axes.reduce((sum, { layout }) => sum + leftBySweep(layout, 0).expected, 0);
  const most = Math.min(
    settings.mostLoss,
    Math.max(settings.leastLoss, settings.allLoss - settings.leftShare * willBeLeft),
  );
  return (
    chanceBelow(lossChances(mind).along, most) >=
    (mind.steps < settings.fewSteps ? settings.earlyChance : settings.alongChance)
  );
}

/** M2 of both axes, and what their gains say of how the spots lay. */
function* firstPeak(trail: Trail, known: Known): Asking<Mind> {
  const layout = [ridgeLayout(known, 'horizontal'), ridgeLayout(known, 'vertical')] as const;
  let before = yield* stand(trail, 'start');
  const gains: (number | null)[] = [];
  const highest: [number | null, number | null] = [null, null];
  const left = [leftBySweep(layout[0], 1), leftBySweep(layout[1], 1)] as const;
  const lefts: Belief['left'] = [...left];
  for (let i = 0; i < 6 && !isSpent(trail); i++) {
    const axis: AxisIndex = i % 2 === 0 ? 0 : 1;
    if (i >= 2 && lefts[axis].expected < settings.leftInTheDark) break;
    const seen = yield* sweep(trail, near(axes[axis]!), 'climb');
    const gain = seen !== null && before !== null ? Math.max(0, seen - before) : null;
    if (i < 2) gains.push(gain);
    else if (gain !== null) gains[axis] = (gains[axis] ?? 0) + gain;
    if (seen === null) continue;
    before = seen;
    highest[axis] = seen;
    lefts[axis] = leftBySweep(layout[axis], trail.floor / Math.exp(seen));
  }
  return { ...newBelief(layout, gains), left: lefts, highest, row: null, steps: 0, surprises: 0 };
}

/** Steps of M1, each followed by M2, until little is believed to be lost. */
function* alongTheRidge(trail: Trail, mind: Mind): Asking<void> {
  for (let i = 0; i < settings.mostSteps && !isSpent(trail); i++) {
    if (sureAlong(mind) || trail.undone >= mostUndone) return;
    const figures = [ridgeFigures(mind, 0), ridgeFigures(mind, 1)] as const;
    const axis: AxisIndex = figures[0].loss >= figures[1].loss ? 0 : 1;
    yield* step(trail, mind, axis, wantedMove(figures[axis]));
  }
}

/** Where to go along the ridge of an axis: to where the peak is believed, or to where more is learned. */
function wantedMove({ value, uncertainty }: RidgeFigures): number {
  if (value ** 2 > settings.meanShare * (value ** 2 + uncertainty ** 2)) return -value;
  const { learnTimes, learnLeast, learnMost } = settings;
  const length = Math.min(learnMost, Math.max(learnLeast, learnTimes * uncertainty));
  return value > 0 ? -length : length;
}

/** One step of M1 by the light, as far as one goes, and M2 behind it. */
function* step(trail: Trail, mind: Mind, axis: AxisIndex, move: number): Asking<void> {
  const belief = mind.axes[axis];
  const { sinRidge } = belief.layout;
  const depth = Math.min(
    deepestWith(trail),
    Math.max(settings.shallowest, Math.abs(move) / Math.max(sinRidge, 1e-6)),
  );
  const sense: Sense = move > 0 ? 1 : -1;
  const fraction = Math.exp(-(depth ** 2));
  if (mind.row !== axis && trail.peak !== null) beginRow(belief, Math.log(trail.peak));
  mind.row = axis;
  mind.steps += 1;
  const left = yield* detune(trail, far(axes[axis]!), sense, fraction);
  if (left === null) {
    yield* sweepNear(trail, mind, axis, 'bring-back');
    return;
  }
  const { seen, isUndone } = yield* bringBack(trail, axes[axis]!, left);
  if (isUndone) {
    // M1 stands where it stood as nearly as a sweep brings it there: what follows is a new row of readings
    mind.row = null;
    return;
  }
  moveAlong(belief, sense, left);
  learn(trail, mind, axis, seen);
}

/** √(−ln) of the least light that still stands clear of the floor. */
function deepestWith({ peak, floor }: Trail): number {
  if (peak === null) return 1;
  const clear = floor > 0 ? Math.log(peak / (settings.floors * floor)) : Number.POSITIVE_INFINITY;
  return Math.min(settings.deepest, Math.sqrt(Math.max(0.5, clear)));
}

/** A sweep of M2 and what it teaches. */
function* sweepNear(
  trail: Trail,
  mind: Mind,
  axis: AxisIndex,
  why: 'bring-back' | 'polish',
): Asking<number | null> {
  const seen = yield* sweep(trail, near(axes[axis]!), why);
  learn(trail, mind, axis, seen);
  return seen;
}

/** What the highest light of a sweep of M2 teaches; null: it told nothing. */
function learn(trail: Trail, mind: Mind, axis: AxisIndex, seen: number | null): void {
  if (seen === null) return;
  const floors = trail.floor / Math.exp(seen);
  if (mind.row === axis && mind.axes[axis].begun) {
    if (weighHighest(mind.axes[axis], seen, floors) < surprising) mind.surprises += 1;
  }
  mind.highest[axis] = seen;
  mind.left[axis] = leftBySweep(mind.axes[axis].layout, floors);
  trail.estimate = estimateOf(mind);
}

/** M2 of both axes until the meter stands where it was highest, or as near to it as these mounts let a hand come. */
function* polishNear(trail: Trail, mind: Mind): Asking<void> {
  const order: readonly AxisIndex[] = mind.row === 1 ? [0, 1] : [1, 0];
  for (const axis of order) {
    let [sum, count] = [0, 0];
    for (let i = 0; i < settings.polishTries && !isSpent(trail); i++) {
      const seen = yield* sweepNear(trail, mind, axis, 'polish');
      const standing = yield* stand(trail, 'compare');
      if (seen === null || standing === null) break;
      sum += seen;
      count += 1;
      const before = mind.left[axis];
      mind.left[axis] = compared(before, sum / count - standing, trail.floor / Math.exp(standing));
      trail.estimate = estimateOf(mind);
      // every sweep is a new throw: a mount that is coarse for the light must be lucky, and in the end content with less
      const content = settings.content + settings.contentMore * i;
      if (mind.left[axis].expected < Math.max(settings.left, quantileLeft(before, content))) break;
    }
  }
}

function verdictOf(trail: Trail, mind: Mind): WalkVerdict {
  const claims95 = chanceBelow(lossChances(mind).whole, -Math.log(0.95)) >= settings.claim;
  if (mind.surprises > 2) notice(trail, { id: 'readings-disagree' });
  return {
    reason: claims95
      ? 'reached'
      : trail.undone >= mostUndone
        ? 'something-else'
        : isSpent(trail)
          ? 'budget'
          : 'hand-limit',
    claims95,
    estimate: estimateOf(mind),
    remarks: trail.noticed,
  };
}
