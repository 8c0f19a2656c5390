/** Where a live turn stands: what is to be said to the hand, and the answer that it only has to confirm. */
import {
  clearlyOff,
  heldPeak,
  isAbovePeaks,
  isBackAtPeak,
  isPeakKnown,
  type PeakHold,
} from '../instrument/peak-hold.ts';
import { type Shown, type Standing, shownNow, standingNow } from '../instrument/reading-window.ts';
import { gainsBack, mostMissing } from './bring-back.ts';
import { againstTarget } from './fall-to.ts';
import { ofItsLight } from './light-noise.ts';
import { edgeLeft, isDark, type Turn, type TurnContext, wrongScrew } from './live-turn.ts';
import type { Screw, WalkAnswer } from './step.ts';

/** What is to be said to the hand. */
export type TurnSign =
  /** No reading has come yet. */
  | 'listening'
  /** Nothing comes from the instrument: the step waits. */
  | 'gap'
  /** More light than it can count, now or earlier in this turn. */
  | 'too-much'
  | 'covered'
  | 'dark'
  /** The reading does not follow the screw. */
  | 'still'
  /** A sweep that should bring the light back brings none. */
  | 'not-back'
  /** Hands off: not at rest yet, and at rest. */
  | 'settling'
  | 'resting'
  | 'block'
  | 'seek'
  | 'rising'
  /** It falls from where it began: the other side is unseen. */
  | 'other-way'
  /** Behind the peak; coming back to it; behind it once more, on the side it was come from. */
  | 'past'
  | 'nearing'
  | 'passed-again'
  /** It was said that it falls, and it falls on: the hand turns the same way still, or is over the top on the other side. */
  | 'falls-on'
  | 'back-at-peak'
  /** On the way down to a target, at it, and beyond. */
  | 'lower'
  | 'at-target'
  | 'too-low'
  /** It rises instead: from the start, back from beyond the target, and over the top to the far flank. */
  | 'wrong-way'
  | 'back-too-far'
  | 'over-top'
  /** Another screw was turned than the one that is asked. */
  | 'wrong-screw'
  /** The beam seems to be blocked still. */
  | 'let-through'
  /** A plateau: one edge, the other, its middle. */
  | 'first-edge'
  | 'second-edge'
  | 'to-middle'
  /** Turned by count: the meter has nothing to say. */
  | 'by-count';

/** Where a turn stands. */
export interface TurnNow {
  /** What the meter shows; null: nothing. */
  readonly shown: number | null;
  /** What is held of this turn: the peak of a sweep; null: nothing. */
  readonly held: number | null;
  /** The reading to come to; null: none is known. */
  readonly goal: number | null;
  readonly sign: TurnSign;
  /** What the answer would be now; null: there is none to be taken. Unless it is ready only a hand that means it takes it. */
  readonly take: WalkAnswer | null;
  /** Whether the sign agrees that the answer be taken. */
  readonly isReady: boolean;
  /** The screw that was turned instead of the one that is asked; null: none that anybody knows of. */
  readonly wrongScrew: Screw | null;
  /** Whether the goal is reached and the meter rests at it, so that the walk may go on by itself. */
  readonly isSettled: boolean;
}

/** So long nothing but noise, ms, and a screw that is turned is not the one that is asked, or has slack. */
const stillAfter = 20_000;
/** So long a sweep has shown no light, ms. */
const darkAfter = 4_000;

/** Where a turn stands, the instrument silent or not. */
export function turnNow(turn: Turn, context: TurnContext, isSilent: boolean): TurnNow {
  const standing = standingNow(turn.window, context.noise, context.floor ?? 0);
  const raw = shownNow(turn.window, context.noise);
  const shown = raw === null ? null : ofItsLight(raw, turn.window, context.floor ?? 0);
  const held = context.step.kind === 'sweep' && turn.hold !== null ? heldPeak(turn.hold).value : null;
  const none = {
    shown: shown?.value ?? turn.last?.value ?? null,
    held,
    goal: null,
    take: null,
    isReady: false,
    wrongScrew: wrongScrew(context),
    isSettled: false,
  };
  if (isSilent || turn.last?.value === null) return { ...none, shown: null, sign: 'gap' };
  if (turn.isSpoiled || turn.tooMuch > 0)
    return { ...none, shown: turn.last?.value ?? null, sign: 'too-much' };
  if (none.wrongScrew !== null) return { ...none, sign: 'wrong-screw' };
  if (shown === null || standing === null || turn.hold === null) return { ...none, sign: 'listening' };
  const seen: Seen = { ...none, shown: shown.value, at: shown, standing, hold: turn.hold };
  const { step } = context;
  switch (step.kind) {
    case 'floor':
      return atFloor(turn, seen);
    case 'stand':
    case 'strip':
      return standingStill(turn, context, seen);
    case 'sweep':
      return sweeping(turn, context, seen);
    case 'detune':
      return detuning(turn, context, seen, step.target);
    case 'middle':
      return centring(turn, context, seen, step.target);
    case 'turn':
    case 'focus':
      return { ...told(seen), sign: 'by-count', take: { outcome: 'did' }, isReady: true };
  }
}

interface Seen extends Pick<TurnNow, 'held' | 'goal' | 'take' | 'isReady' | 'wrongScrew' | 'isSettled'> {
  readonly shown: number;
  readonly at: Shown;
  readonly standing: Standing;
  readonly hold: PeakHold;
}

const told = ({ at, standing, hold, ...now }: Seen): Omit<TurnNow, 'sign'> => now;

/** What stands: at rest the middle of some seconds, before that what is shown, which has no past to drag along. */
function stands({ standing, at }: Pick<Seen, 'standing' | 'at'>): WalkAnswer {
  return { outcome: 'did', standing: Math.max(0, standing.isAtRest ? standing.value : at.value) };
}

/** The beam is blocked by a hand: only a clear fall of the light tells that it is. */
function atFloor(turn: Turn, seen: Seen): TurnNow {
  const { value, isAtRest } = seen.standing;
  const hasFallen = value < turn.highest / 2;
  const take = stands(seen);
  const sign = hasFallen ? (isAtRest ? 'resting' : 'settling') : 'block';
  const isReady = hasFallen && isAtRest;
  return { ...told(seen), take, sign, isReady, isSettled: isReady };
}

function standingStill(turn: Turn, { step, floor }: TurnContext, seen: Seen): TurnNow {
  const { isAtRest } = seen.standing;
  const take = stands(seen);
  if (isDark(seen.at, floor)) {
    // before the first peak it may well be dark: then a hand takes it that means it
    if (step.kind === 'stand' && step.why === 'start') return { ...told(seen), take, sign: 'let-through' };
    return { ...told(seen), sign: turn.isCovered ? 'covered' : 'dark' };
  }
  const sign = isAtRest ? 'resting' : 'settling';
  // that the power was raised, or is not to be, only a hand can say
  const mayGoOn = step.kind === 'stand' && step.why !== 'after-power';
  return { ...told(seen), take, sign, isReady: isAtRest, isSettled: isAtRest && mayGoOn };
}

/** That it falls on is told for so long, ms: a hand that has turned round may be in the slack by then. */
const fallTold = 2_000;
/** The least of many estimates of noise is so much too low. @source of some dozen second differences each, roughly: our choice */
const leastOfMany = 1.6;

/** A hand that has turned at all has seen so little of the light it began with. @source our choice */
const hasLeft = 0.7;

function sweeping(turn: Turn, { step, floor, peak }: TurnContext, seen: Seen): TurnNow {
  const { hold, at, standing } = seen;
  const dark = floor ?? 0;
  const best = heldPeak(hold);
  const goal = best.value;
  const since = at.t - (turn.first?.t ?? at.t);
  if (turn.isCovered) return { ...told(seen), goal, sign: 'covered' };
  if (isDark(best, floor)) return { ...told(seen), sign: since > darkAfter ? 'dark' : 'seek' };
  const take: WalkAnswer = { outcome: 'did', highest: goal };
  // at rest more readings tell, and the word for it does not flicker
  const scatter = leastOfMany * turn.quietest * (goal - dark);
  const isBack = isBackAtPeak(hold, standing.isAtRest ? standing : at, dark, scatter);
  const began = (turn.first?.value ?? 0) - dark;
  const before = (peak ?? 0) - dark;
  const isAsked = step.kind === 'sweep' && step.why === 'bring-back' && began < mostMissing * before;
  const isMissing = isAsked && goal - dark < gainsBack * began;
  // a hand that rests where it began has come back from a rise that was none
  if (isMissing && standing.isAtRest && turn.lowest - dark < hasLeft * began)
    return { ...told(seen), goal, take, sign: 'not-back' };
  if (hold.peaks.length === 0) {
    if (hasStoodStill(turn, seen)) return { ...told(seen), goal, take, sign: 'still' };
    const { turning, before } = hold;
    const hasRisen = turning.value - before.value > clearlyOff(turning, before, dark);
    return { ...told(seen), take, sign: hasRisen ? 'rising' : 'seek' };
  }
  // neither a start that was left nor a place that is far outshone is a peak
  if (isAbovePeaks(hold, dark, scatter)) return { ...told(seen), take, sign: 'rising' };
  const fallsOn = hold.fellOn !== null && at.t - hold.fellOn < fallTold;
  if (!isPeakKnown(hold)) {
    if (hold.rises) return { ...told(seen), take, sign: 'rising' };
    return { ...told(seen), goal, take, sign: fallsOn ? 'falls-on' : 'other-way' };
  }
  if (isMissing) return { ...told(seen), goal, take, sign: 'not-back' };
  if (isBack)
    return {
      ...told(seen),
      goal,
      take,
      sign: 'back-at-peak',
      isReady: true,
      isSettled: standing.isAtRest,
    };
  const behind = hold.passes > 1 ? 'passed-again' : fallsOn ? 'falls-on' : 'past';
  const sign = hold.rises ? 'nearing' : behind;
  return { ...told(seen), goal, take, sign };
}

function hasStoodStill({ first, highest, lowest }: Turn, { at }: Seen): boolean {
  if (first === null || at.t - first.t < stillAfter) return false;
  return highest - lowest < Math.max(12 * at.sd, 0.05 * highest);
}

/** Light that rises so far above where it began did not rise by slack or noise. @source our choice */
const wellAbove = 1.5;

function detuning(turn: Turn, { floor }: TurnContext, seen: Seen, target: number): TurnNow {
  const dark = floor ?? 0;
  const { fall } = turn;
  const light = seen.at.value - dark;
  const here = { ...told(seen), goal: target };
  if (turn.isCovered) return { ...here, sign: 'covered' };
  const isLit = !isDark(seen.at, floor);
  const take = isLit ? stands(seen) : null;
  if (fall.isOverTop) return { ...here, take, sign: 'over-top' };
  const began = (turn.first?.value ?? seen.shown) - dark;
  const against = againstTarget(light, target - dark, began, fall);
  if (against === 'above') {
    if (fall.isReached) return { ...here, sign: seen.hold.rises ? 'back-too-far' : 'lower' };
    if (seen.hold.rises && light > wellAbove * began) return { ...here, sign: 'wrong-way' };
    return { ...here, sign: hasStoodStill(turn, seen) ? 'still' : 'lower' };
  }
  if (against === 'below' || !isLit) return { ...here, take, sign: 'too-low' };
  return { ...here, take, sign: 'at-target', isReady: true, isSettled: seen.standing.isAtRest };
}

function centring(turn: Turn, { floor }: TurnContext, seen: Seen, target: number): TurnNow {
  if (turn.isCovered) return { ...told(seen), goal: target, sign: 'covered' };
  if (turn.edges < 2) {
    const sign = hasStoodStill(turn, seen) ? 'still' : turn.edges === 0 ? 'first-edge' : 'second-edge';
    return { ...told(seen), goal: target, sign };
  }
  const dark = floor ?? 0;
  if (turn.isBeyondEdge || seen.at.value - dark < edgeLeft * (target - dark))
    return { ...told(seen), sign: 'to-middle' };
  return { ...told(seen), take: stands(seen), sign: 'to-middle', isReady: true };
}
