/** What a live turn comes to: a sign for the hand, and the answer that it only has to confirm. */
import type { PeakHold } from '../instrument/peak-hold.ts';
import type { Shown, Standing } from '../instrument/reading-window.ts';
import type { Turn } from './live-turn.ts';
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

/** The same while it is found out: what the meter shows and stands at, and what is held of it. */
export interface Seen
  extends Pick<TurnNow, 'held' | 'goal' | 'take' | 'isReady' | 'wrongScrew' | 'isSettled'> {
  readonly shown: number;
  readonly at: Shown;
  readonly standing: Standing;
  readonly hold: PeakHold;
}

/** What is told of it but for its sign. */
export const told = ({ at, standing, hold, ...now }: Seen): Omit<TurnNow, 'sign'> => now;

/** What stands: at rest the middle of some seconds, before that what is shown, which has no past to drag along. */
export function stands({ standing, at }: Pick<Seen, 'standing' | 'at'>): WalkAnswer {
  return { outcome: 'did', standing: Math.max(0, standing.isAtRest ? standing.value : at.value) };
}

/** So long nothing but noise, ms, and a screw that is turned is not the one that is asked, or has slack. */
const stillAfter = 20_000;

/** Whether the reading has not followed the screw. */
export function hasStoodStill({ first, highest, lowest }: Turn, { at }: Seen): boolean {
  if (first === null || at.t - first.t < stillAfter) return false;
  return highest - lowest < Math.max(12 * at.sd, 0.05 * highest);
}
