import { doStep } from '../practice/play.ts';
import type { PracticeBench } from '../practice/practice-bench.ts';
import type { Screw, WalkAnswer, WalkStep } from './step.ts';

/** Something done at a practice bench. Done again in the same order on the same bench, it brings the same readings. */
export type PracticeAct =
  /** A screw turned on the screen, turns; 0: only looked at the meter. */
  | { readonly do: 'turn'; readonly screw: Screw; readonly turns: number }
  /** The beam was blocked before the fibre, or let through. */
  | { readonly do: 'block'; readonly blocked: boolean }
  /** The simulated hand did a step. */
  | { readonly do: 'hand'; readonly step: WalkStep };

/** What it came to. */
export interface Practised {
  /** What the meter shows afterwards. */
  readonly reading: number;
  /** What the hand answers; null where it did no step. */
  readonly answer: WalkAnswer | null;
}

/** Does one thing at a practice bench, which is changed by it. */
export function practise(bench: PracticeBench, act: PracticeAct): Practised {
  if (act.do === 'turn') bench.turn(act.screw, act.turns);
  if (act.do === 'block') bench.block(act.blocked);
  // the hand blocks the beam itself where a step asks for it, and nowhere else
  if (act.do === 'hand') bench.block(false);
  const answer = act.do === 'hand' ? doStep(bench, act.step) : null;
  return { reading: bench.standing(), answer };
}
