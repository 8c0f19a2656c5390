import { checkAnswer } from './check-answer.ts';
import type { WalkAsk, WalkEstimate, WalkRemaining, WalkRemark } from './procedure.ts';
import { lessOne, remainingAt, type Stage } from './remaining.ts';
import { type Screw, type Sense, turnsAScrew, type WalkAnswer, type WalkStep } from './step.ts';
import { secondsFor } from './step-time.ts';

/** Part of a procedure: asks, and ends with something. */
export type Asking<T> = Generator<WalkAsk, T, WalkAnswer>;

/** Nothing is known yet. */
export const noEstimate: WalkEstimate = {
  missing: null,
  missingLow: null,
  missingHigh: null,
  horizontalShare: null,
  ridge: null,
};

/** What a running procedure remembers. It lives as long as the procedure, and is made anew by a replay. */
export interface Trail {
  /** Reading with the beam blocked, in the unit of the meter. */
  floor: number;
  /** Screws turned so far, and how many may be. */
  turned: number;
  readonly budget: number;
  /** Steps of M1 that were undone, because the light did not come back. */
  undone: number;
  /** Highest reading of the last sweep, floor left out; null: none yet. */
  peak: number | null;
  /** Highest reading of all sweeps, floor left out; null: none yet. */
  best: number | null;
  estimate: WalkEstimate;
  /** What probably remains. */
  remaining: WalkRemaining | null;
  /** Noticed, and not yet said. */
  remarks: WalkRemark[];
  /** Everything that was noticed. */
  readonly noticed: WalkRemark[];
}

export const newTrail = (budget: number): Trail => ({
  floor: 0,
  turned: 0,
  budget,
  undone: 0,
  peak: null,
  best: null,
  estimate: noEstimate,
  remaining: null,
  remarks: [],
  noticed: [],
});

/** Says something with the next step. */
export function notice(trail: Trail, remark: WalkRemark): void {
  trail.remarks.push(remark);
  trail.noticed.push(remark);
}

/** Tells how much is left from here on. */
export function standsAt(trail: Trail, stage: Stage): void {
  trail.remaining = remainingAt(stage);
}

/** Asks one step and hears the answer. */
export function* ask(trail: Trail, step: WalkStep): Asking<WalkAnswer> {
  const remarks = trail.remarks;
  trail.remarks = [];
  if (turnsAScrew(step)) trail.turned += 1;
  const answer = yield { step, estimate: trail.estimate, remarks, remaining: trail.remaining };
  checkAnswer(step, answer);
  if (trail.remaining !== null) trail.remaining = lessOne(trail.remaining, secondsFor(step));
  return answer;
}

/** Whether the hand has nothing left to give. */
export const isSpent = ({ turned, budget }: Trail): boolean => turned >= budget;

/** Asks for the reading with the beam blocked, unless it is known. */
export function* askFloor(trail: Trail, known: number | null): Asking<void> {
  if (known !== null) {
    trail.floor = known;
    return;
  }
  const answer = yield* ask(trail, { kind: 'floor' });
  if (answer.outcome === 'did') trail.floor = answer.standing ?? 0;
}

/** The least that is taken for light: a reading at the floor says no more than that it is dark. */
const leastLight = 0.3;

/** A reading with the floor taken off. */
export function lightOf(trail: Trail, reading: number): number {
  return Math.max(reading - trail.floor, leastLight * trail.floor, Number.MIN_VALUE);
}

/** A live sweep; ln of the highest light seen, or null where nothing was told. */
export function* sweep(
  trail: Trail,
  screw: Screw,
  why: Extract<WalkStep, { kind: 'sweep' }>['why'],
  reach: number | null = null,
): Asking<number | null> {
  return (yield* sweepAnswered(trail, screw, why, reach)).ln;
}

/** The same, with how it was answered. */
export function* sweepAnswered(
  trail: Trail,
  screw: Screw,
  why: Extract<WalkStep, { kind: 'sweep' }>['why'],
  reach: number | null = null,
): Asking<{ readonly ln: number | null; readonly outcome: WalkAnswer['outcome'] }> {
  const answer = yield* ask(trail, { kind: 'sweep', screw, reach, why });
  const { outcome } = answer;
  if (answer.outcome !== 'did' || answer.highest === undefined) return { ln: null, outcome };
  trail.peak = lightOf(trail, answer.highest);
  trail.best = Math.max(trail.best ?? 0, trail.peak);
  return { ln: Math.log(trail.peak), outcome };
}

/**
 * Turns a screw until a fraction of the last peak is left. The fraction that was come to, which only a live meter tells better
 * than what was asked; null: it was not done.
 */
export function* detune(trail: Trail, screw: Screw, sense: Sense, fraction: number): Asking<number | null> {
  const answer = yield* ask(trail, {
    kind: 'detune',
    screw,
    sense,
    fraction,
    target: trail.floor + fraction * (trail.peak ?? 0),
  });
  if (answer.outcome !== 'did') return null;
  if (answer.standing === undefined || trail.peak === null) return fraction;
  return Math.min(mostLeft, lightOf(trail, answer.standing) / trail.peak);
}

/** A screw that was turned at all has left no more than this. */
const mostLeft = 0.97;

/** ln of the light as it stands; null where nothing was told. */
export function* stand(
  trail: Trail,
  why: Extract<WalkStep, { kind: 'stand' }>['why'],
): Asking<number | null> {
  const answer = yield* ask(trail, { kind: 'stand', why });
  if (answer.outcome !== 'did' || answer.standing === undefined) return null;
  return Math.log(lightOf(trail, answer.standing));
}
