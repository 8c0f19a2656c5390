/** When the answer to a live step is taken: at once if it is ready, else by a second press, once it was said what it takes. */
import { readingIn } from './replay.ts';
import { answerOf, type WalkAnswer, type WalkStep } from './step.ts';
import type { TurnNow } from './turn-sign.ts';

export const twoPresses = {
  /** So long a second press is waited for, ms: afterwards the first is forgotten. */
  waits: 8_000,
  /** From the eye to the finger, ms: a press that was meant for what was ready a moment ago counts as meant. */
  reaction: 700,
} as const;

/** What was pressed in a step so far, and when its answer was ready; times in ms of one clock. */
export interface Pressed {
  /** An answer that is not ready was asked about. */
  readonly askedAt: number | null;
  readonly readyAt: number | null;
  /** The first of two readings that a step asks for. */
  readonly before: number | null;
}

export const notPressed: Pressed = { askedAt: null, readyAt: null, before: null };

/** With one more look: what is ready needs no second press, and what leaves its goal later needs two again. */
export const seenWhilePressed = (pressed: Pressed, isReady: boolean, clock: number): Pressed =>
  isReady ? { ...pressed, askedAt: null, readyAt: clock } : pressed;

/** What a press comes to; a reading in the unit of the meter, null where the answer holds none. */
export type Press =
  | { readonly do: 'answer'; readonly answer: WalkAnswer }
  /** There is nothing to take yet. */
  | { readonly do: 'nothing' }
  /** It is not ready: what it takes and against what is to be said, and one more press takes it. */
  | { readonly do: 'ask'; readonly reading: number | null; readonly pressed: Pressed }
  /** The first of two readings is taken. */
  | { readonly do: 'before'; readonly reading: number | null; readonly pressed: Pressed };

/** One press at a live step. */
export function pressInTurn(
  pressed: Pressed,
  { take, isReady }: TurnNow,
  step: WalkStep,
  clock: number,
): Press {
  if (take === null) return { do: 'nothing' };
  const reading = readingIn(take);
  const lately = (since: number | null, within: number): boolean => since !== null && clock - since <= within;
  const isMeant =
    isReady || lately(pressed.readyAt, twoPresses.reaction) || lately(pressed.askedAt, twoPresses.waits);
  if (!isMeant) return { do: 'ask', reading, pressed: { ...pressed, askedAt: clock } };
  if (answerOf(step) !== 'before-and-standing' || take.outcome !== 'did')
    return { do: 'answer', answer: take };
  if (pressed.before !== null) return { do: 'answer', answer: { ...take, before: pressed.before } };
  // what was ready before it is done says nothing of what is ready afterwards
  return { do: 'before', reading, pressed: { ...notPressed, before: reading } };
}
