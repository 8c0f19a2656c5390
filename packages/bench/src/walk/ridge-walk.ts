import { beginRow, broaden, expectedHighest, fitOf, moveAlong, wasTooFar } from './axis-belief.ts';
import {
  type AxisIndex,
  type Belief,
  chanceBelow,
  estimateOf,
  forgotten,
  lossChances,
  newBelief,
  offsetErrorsIn,
  type RidgeFigures,
  ridgeFigures,
} from './belief.ts';
import { bringBack, gainsBack, mostUndone } from './bring-back.ts';
import { isFlat, scatterOfPeaks, shareOfBest } from './failure-signs.ts';
import { belowForecast, seekFocus } from './focus-search.ts';
import type { Known } from './known.ts';
import { leftBySweep } from './left-behind.ts';
import { isPlateau, toTheMiddle } from './middle-walk.ts';
import { axes, far, near } from './near-mirror.ts';
import type { WalkProcedure, WalkVerdict } from './procedure.ts';
import { ridgeLayout } from './ridge-layout.ts';
import { coarseOf, doubtLayout, isLayoutLost, learn, type Mind, sureAlong } from './ridge-mind.ts';
import { polishNear } from './ridge-polish.ts';
import { budget, settings } from './ridge-settings.ts';
import type { Sense } from './step.ts';
import { asTaught } from './taught-walk.ts';
import {
  type Asking,
  askFloor,
  detune,
  isSpent,
  newTrail,
  notice,
  stand,
  standsAt,
  sweep,
  type Trail,
} from './trail.ts';

/**
 * The tool's own walk: the near mirror live, the far mirror stepped by the light, the highest reading noted; what the
 * readings say about the two ridges is kept as a belief, which decides the next step and when to stop.
 */
export function* ridgeWalk(known: Known): WalkProcedure {
  const trail = newTrail(budget);
  yield* askFloor(trail, known.floor);
  const mind = yield* firstPeak(trail, known);
  const instead = yield* toThePeak(trail, mind);
  if (instead !== null) return instead;
  // focus is another screw: M2 and the ridge are looked at once more behind it
  if (yield* seekFocus(trail, known)) {
    mind.row = null;
    for (const belief of mind.axes) broaden(belief, settings.movedByFocus);
    const after = yield* toThePeak(trail, mind);
    if (after !== null) return after;
  }
  const lost = shareOfBest(trail);
  if (lost !== null && !isSpent(trail)) {
    notice(trail, { id: 'below-best', values: { share: lost } });
    mind.row = null;
    // as far as light must have gone along one ridge to have lost so much
    for (const belief of mind.axes) broaden(belief, Math.sqrt(-Math.log(lost)));
    const after = yield* toThePeak(trail, mind);
    if (after !== null) return after;
  }
  return verdictOf(trail, mind, known);
}

/** Along the ridges and M2 behind them, until both are believed; a verdict where the ridge had to be given up. */
function* toThePeak(trail: Trail, mind: Mind): Asking<WalkVerdict | null> {
  for (let round = 0; round < settings.rounds; round++) {
    const end = yield* alongTheRidge(trail, mind);
    if (end === 'plateau') return yield* toTheMiddle(trail);
    if (end === 'layout-lost') return yield* asTaught(trail);
    yield* polishNear(trail, mind);
    if (isSpent(trail) || sureAlong(mind) || hasGivenUp(trail, mind)) break;
  }
  return null;
}

/** M1 did nothing, or what it did had to be undone, too often for it to be chance. */
const hasGivenUp = (trail: Trail, mind: Mind): boolean => trail.undone >= mostUndone || mind.idle >= mostIdle;
const mostIdle = 3;

/** M2 of both axes, and what their gains say of how the spots lay. */
function* firstPeak(trail: Trail, known: Known): Asking<Mind> {
  const layout = [ridgeLayout(known, 'horizontal'), ridgeLayout(known, 'vertical')] as const;
  standsAt(trail, { kind: 'first', sweeps: 0 });
  let before = yield* stand(trail, 'start');
  const gains: (number | null)[] = [];
  const left = [leftBySweep(layout[0], 1), leftBySweep(layout[1], 1)] as const;
  const lefts: Belief['left'] = [...left];
  for (let i = 0; i < 6 && !isSpent(trail); i++) {
    standsAt(trail, { kind: 'first', sweeps: i });
    const axis: AxisIndex = i % 2 === 0 ? 0 : 1;
    if (i >= 2 && lefts[axis].expected < settings.leftInTheDark) break;
    const seen = yield* sweep(trail, near(axes[axis]!), 'climb');
    const gain = seen !== null && before !== null ? Math.max(0, seen - before) : null;
    if (i < 2) gains.push(gain);
    else if (gain !== null) gains[axis] = (gains[axis] ?? 0) + gain;
    if (seen === null) continue;
    before = seen;
    lefts[axis] = leftBySweep(layout[axis], trail.floor / Math.exp(seen));
  }
  const peaks = before === null ? [] : [before];
  const belief = { ...newBelief(layout, gains, offsetErrorsIn(known.wavelength)), left: lefts };
  return { ...belief, row: null, steps: 0, surprises: 0, idle: 0, peaks, repeats: [], isPeak: false };
}

/** Steps of M1, each followed by M2, until little is believed to be lost, or why no more of them helps. */
function* alongTheRidge(trail: Trail, mind: Mind): Asking<'believed' | 'plateau' | 'layout-lost'> {
  for (let i = 0; i < settings.mostSteps && trail.turned < budget - settings.keptForPolish; i++) {
    if (sureAlong(mind) || hasGivenUp(trail, mind)) break;
    const figures = [ridgeFigures(mind, 0), ridgeFigures(mind, 1)] as const;
    const axis: AxisIndex = figures[0].loss >= figures[1].loss ? 0 : 1;
    standsAt(trail, { kind: 'along', ahead: stepsAhead(trail, mind, figures), coarse: coarseOf(mind) });
    yield* step(trail, mind, axis, wantedMove(figures[axis]));
    if (!mind.isPeak && isFlat(mind.peaks)) {
      if (yield* isPlateau(trail, mind.axes[0].layout.nearPerTurn)) return 'plateau';
      mind.isPeak = true;
      mind.row = null;
    }
    doubtLayout(trail, mind);
    if (isLayoutLost(mind)) return 'layout-lost';
  }
  return 'believed';
}

/** Steps of M1 that lead to where the peak is believed, or as far as the doubt reaches. */
const stepsAhead = (trail: Trail, { axes: [h, v] }: Mind, figures: readonly [RidgeFigures, RidgeFigures]) =>
  [h, v].reduce((sum, { layout }, axis) => {
    const { value, uncertainty } = figures[axis as AxisIndex];
    return sum + Math.hypot(value, uncertainty) / (layout.sinRidge * deepestWith(trail));
  }, 0);

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
    noticeIdle(trail, mind);
    learn(trail, mind, axis, yield* sweep(trail, near(axes[axis]!), 'bring-back'));
    return;
  }
  const { seen, isUndone } = yield* bringBack(trail, axes[axis]!, left);
  if (isUndone) {
    // M1 stands where it stood as nearly as a sweep brings it there: what follows is a new row of readings
    mind.row = null;
    wasTooFar(belief, sense, left, gainsBack * left);
    return;
  }
  moveAlong(belief, sense, left);
  const believed = yield* looksAgain(trail, mind, axis, seen);
  learn(trail, mind, axis, believed);
  if (believed !== null) mind.peaks = depth < settings.farStep ? [] : [...mind.peaks, believed];
}

/** A meter that does not fall when M1 is turned sees no light that comes by M1. */
function noticeIdle(trail: Trail, mind: Mind): void {
  mind.idle += 1;
  if (mind.idle === 2) notice(trail, { id: 'far-mirror-does-nothing' });
}

/** A peak above anything that was believed, ln. */
const farAbove = 0.3;

/** A peak that hardly can be is looked for once more before it is believed; the higher one counts. */
function* looksAgain(trail: Trail, mind: Mind, axis: AxisIndex, seen: number | null): Asking<number | null> {
  const belief = mind.axes[axis];
  if (seen === null || !belief.begun || isSpent(trail)) return seen;
  if (fitOf(belief, seen, trail.floor / Math.exp(seen)) >= settings.incredible) return seen;
  const isAbove = seen > expectedHighest(belief) + farAbove;
  notice(trail, { id: isAbove ? 'second-maximum' : 'peak-does-not-fit' });
  const again = yield* sweep(trail, near(axes[axis]!), 'bring-back');
  const higher = again === null ? seen : Math.max(seen, again);
  // what was read before was read on another peak, and says nothing of this one
  if (isAbove) {
    Object.assign(belief, forgotten(belief));
    beginRow(belief, higher);
  }
  return higher;
}

/** √(−ln) of the least light that still stands clear of the floor. */
function deepestWith({ peak, floor }: Trail): number {
  if (peak === null) return 1;
  const clear = floor > 0 ? Math.log(peak / (settings.floors * floor)) : Number.POSITIVE_INFINITY;
  return Math.min(settings.deepest, Math.sqrt(Math.max(0.5, clear)));
}

function verdictOf(trail: Trail, mind: Mind, known: Known): WalkVerdict {
  if (mind.surprises > 2) notice(trail, { id: 'readings-disagree' });
  const share = belowForecast(trail, known);
  if (share !== null) notice(trail, { id: 'below-forecast', values: { share } });
  const lost = shareOfBest(trail);
  if (lost !== null) notice(trail, { id: 'stays-below-best', values: { share: lost } });
  const scatter = scatterOfPeaks(mind.repeats);
  if (scatter !== null) notice(trail, { id: 'peaks-scatter', values: { scatter } });
  // what is believed rests on the readings alone; more light that was seen, or was to be expected, speaks against it
  const claims95 =
    lost === null &&
    share === null &&
    scatter === null &&
    chanceBelow(lossChances(mind), -Math.log(0.95)) >= settings.claim;
  return {
    reason: claims95
      ? 'reached'
      : hasGivenUp(trail, mind)
        ? 'something-else'
        : isSpent(trail)
          ? 'budget'
          : 'hand-limit',
    claims95,
    estimate: estimateOf(mind),
    remarks: trail.noticed,
  };
}
