/** Where a live turn stands: what is to be said to the hand, and the answer that it only has to confirm. */
import { heldPeak, isBackAtPeak, isPeakKnown, type PeakHold } from '../instrument/peak-hold.ts';
import { type Shown, type Standing, shownNow, standingNow } from '../instrument/reading-window.ts';
import { gainsBack, mostMissing } from './bring-back.ts';
import { edgeLeft, isDark, type Turn, type TurnContext } from './live-turn.ts';
import type { WalkAnswer } from './step.ts';

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
  | 'past'
  | 'back-at-peak'
  /** On the way down to a target, at it, and beyond. */
  | 'lower'
  | 'at-target'
  | 'too-low'
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
  /** What the answer would be now; null: there is none to be taken. */
  readonly take: WalkAnswer | null;
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
  const shown = shownNow(turn.window, context.noise);
  const held = context.step.kind === 'sweep' && turn.hold !== null ? heldPeak(turn.hold).value : null;
  const none = {
    shown: shown?.value ?? turn.last?.value ?? null,
    held,
    goal: null,
    take: null,
    isSettled: false,
  };
  if (isSilent || turn.last?.value === null) return { ...none, shown: null, sign: 'gap' };
  if (turn.isSpoiled || turn.tooMuch > 0)
    return { ...none, shown: turn.last?.value ?? null, sign: 'too-much' };
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
      return { ...told(seen), sign: 'by-count', take: { outcome: 'did' } };
  }
}

interface Seen extends Pick<TurnNow, 'held' | 'goal' | 'take' | 'isSettled'> {
  readonly shown: number;
  readonly at: Shown;
  readonly standing: Standing;
  readonly hold: PeakHold;
}

const told = ({ shown, held, goal, take, isSettled }: Seen): Omit<TurnNow, 'sign'> => ({
  shown,
  held,
  goal,
  take,
  isSettled,
});

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
  return { ...told(seen), take, sign, isSettled: hasFallen && isAtRest };
}

function standingStill(turn: Turn, { step, floor }: TurnContext, seen: Seen): TurnNow {
  const { isAtRest } = seen.standing;
  // before the first peak it may well be dark
  const mayBeDark = step.kind === 'stand' && step.why === 'start';
  if (isDark(seen.at, floor) && !mayBeDark)
    return { ...told(seen), sign: turn.isCovered ? 'covered' : 'dark' };
  const sign = isAtRest ? 'resting' : 'settling';
  // that the power was raised, or is not to be, only a hand can say
  const mayGoOn = step.kind === 'stand' && step.why !== 'after-power';
  return { ...told(seen), take: stands(seen), sign, isSettled: isAtRest && mayGoOn };
}

function sweeping(turn: Turn, { step, floor, peak }: TurnContext, seen: Seen): TurnNow {
  const { hold, at, standing } = seen;
  const dark = floor ?? 0;
  const best = heldPeak(hold);
  const goal = best.value;
  const since = at.t - (turn.first?.t ?? at.t);
  if (turn.isCovered) return { ...told(seen), goal, sign: 'covered' };
  if (isDark(best, floor)) return { ...told(seen), sign: since > darkAfter ? 'dark' : 'seek' };
  const take: WalkAnswer = { outcome: 'did', highest: goal };
  const isKnown = isPeakKnown(hold);
  // at rest more readings tell, and the word for it does not flicker
  const scatter = turn.quietest * (goal - dark);
  const isBack = isBackAtPeak(hold, standing.isAtRest ? standing : at, dark, scatter);
  const began = (turn.first?.value ?? 0) - dark;
  const before = (peak ?? 0) - dark;
  const isMissing = step.kind === 'sweep' && step.why === 'bring-back' && began < mostMissing * before;
  if (isMissing && isKnown && goal - dark < gainsBack * began)
    return { ...told(seen), goal, take, sign: 'not-back' };
  if (isKnown && isBack) {
    return { ...told(seen), goal, take, sign: 'back-at-peak', isSettled: standing.isAtRest };
  }
  if (hold.peaks.length > 0) return { ...told(seen), goal, take, sign: isKnown ? 'past' : 'other-way' };
  if (hasStoodStill(turn, seen)) return { ...told(seen), goal, take, sign: 'still' };
  const rises = hold.turning.value - hold.before.value > 0.05 * (hold.turning.value - dark) && isBack;
  return { ...told(seen), goal: null, take, sign: rises ? 'rising' : 'seek' };
}

function hasStoodStill({ first, highest, lowest }: Turn, { at }: Seen): boolean {
  if (first === null || at.t - first.t < stillAfter) return false;
  return highest - lowest < Math.max(12 * at.sd, 0.05 * highest);
}

/** The light at a target is right within these factors: a hand that stops by the meter does no better. @source twice the 10 % of an angle that hands are taken to miss */
const [belowTarget, aboveTarget] = [0.7, 1.4] as const;

function detuning(turn: Turn, { floor }: TurnContext, seen: Seen, target: number): TurnNow {
  const dark = floor ?? 0;
  const light = seen.at.value - dark;
  const wanted = target - dark;
  const goal = target;
  if (turn.isCovered) return { ...told(seen), goal, sign: 'covered' };
  if (light > aboveTarget * wanted)
    return { ...told(seen), goal, sign: hasStoodStill(turn, seen) ? 'still' : 'lower' };
  const take = stands(seen);
  if (isDark(seen.at, floor)) return { ...told(seen), goal, sign: 'too-low' };
  if (light < belowTarget * wanted) return { ...told(seen), goal, take, sign: 'too-low' };
  return { ...told(seen), goal, take, sign: 'at-target', isSettled: seen.standing.isAtRest };
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
  return { ...told(seen), take: stands(seen), sign: 'to-middle' };
}
