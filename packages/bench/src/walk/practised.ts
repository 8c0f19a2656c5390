import { doStep } from '../practice/play.ts';
import type { PracticeBench } from '../practice/practice-bench.ts';
import type { Screw, WalkAnswer, WalkStep } from './step.ts';

/** Something done at a practice bench. Done again in the same order on the same bench, it brings the same readings. */
export type PracticeAct =
  /** A screw turned on the screen, turns; 0: only looked at the meter. */
  | { readonly do: 'turn'; readonly screw: Screw; readonly turns: number }
  /** The simulated hand did a step. */
  | { readonly do: 'hand'; readonly step: WalkStep };

/** What it came to. */
export interface Practised {
  /** What the meter shows afterwards. */
  readonly reading: number;
  /** What the hand answers; null for a turned screw. */
  readonly answer: WalkAnswer | null;
}

/** Does one thing at a practice bench, which is changed by it. */
export function practise(bench: PracticeBench, act: PracticeAct): Practised {
  const answer = act.do === 'hand' ? doStep(bench, act.step) : null;
  if (act.do === 'turn') bench.turn(act.screw, act.turns);
  return { reading: bench.standing(), answer };
}
