import type { WalkMeter } from './reading-text.ts';
import type { WalkAnswer } from './step.ts';

/** What reads the light, as it was chosen. */
export interface WalkReads {
  /** The instrument of the bench book, by its id; null: readings are typed, or told by eye. */
  readonly instrument: string | null;
  readonly meter: WalkMeter;
  /** What it shows with the beam blocked, as it was known when it was chosen; null: the walk asks. */
  readonly floor: number | null;
  /** Whether a step is answered without a press once the meter rests at what was asked. */
  readonly goesOn: boolean;
}

/** One thing done in a walk: an answer, the one before taken back, or another way of reading the light. */
export type WalkAct =
  | { readonly do: 'answer'; readonly answer: WalkAnswer }
  | { readonly do: 'undo' }
  /** `anew`: what was read before no longer compares, though the same instrument reads. */
  | { readonly do: 'reads'; readonly reads: WalkReads; readonly anew: boolean };
