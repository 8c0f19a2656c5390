import {
  answerOf,
  liveText,
  type TurnNow,
  turnSaid,
  twoPresses,
  type WalkAnswer,
  type WalkMeter,
  type WalkStep,
} from '@coreward/bench';

/** What was pressed in a step so far, and when its answer was ready; times in ms of the shell's clock. */
export interface Pressed {
  /** An answer that is not ready was asked about. */
  readonly askedAt: number | null;
  readonly readyAt: number | null;
  /** The first of two readings that a step asks for. */
  readonly before: number | null;
}

export const notPressed: Pressed = { askedAt: null, readyAt: null, before: null };

/** With one more look at the turn: what has become ready needs no second press, and what leaves its goal later needs two again. */
export const seenWhilePressed = (pressed: Pressed, { isReady }: TurnNow, clock: number): Pressed =>
  isReady ? { ...pressed, askedAt: null, readyAt: clock } : pressed;

/** What Enter comes to. */
export type EnterPress =
  | { readonly do: 'answer'; readonly answer: WalkAnswer }
  | { readonly do: 'say'; readonly text: string; readonly pressed: Pressed };

/** One press takes what is ready; what is not is taken by a second one, once it is said what that takes and against what. */
export function pressEnter(
  pressed: Pressed,
  turn: TurnNow,
  step: WalkStep,
  meter: WalkMeter,
  clock: number,
): EnterPress {
  const { take } = turn;
  if (take === null) return { do: 'say', text: 'There is nothing to take yet.', pressed };
  const lately = (since: number | null, within: number) => since !== null && clock - since <= within;
  const isMeant =
    turn.isReady || lately(pressed.readyAt, twoPresses.reaction) || lately(pressed.askedAt, twoPresses.waits);
  const reading = take.outcome === 'did' ? (take.highest ?? take.standing ?? null) : null;
  if (!isMeant) {
    const { insteadOf } = turnSaid(turn, step, meter);
    const takes = reading === null ? 'to go on' : `to take ${liveText(reading, meter)}`;
    const text = `${insteadOf ?? ''} Press Enter again ${takes} all the same.`.trim();
    return { do: 'say', text, pressed: { ...pressed, askedAt: clock } };
  }
  if (answerOf(step) !== 'before-and-standing' || take.outcome !== 'did')
    return { do: 'answer', answer: take };
  if (pressed.before !== null) return { do: 'answer', answer: { ...take, before: pressed.before } };
  const text = `Taken as the reading before: ${reading === null ? '–' : liveText(reading, meter)}. Do it, and press Enter again.`;
  // what was ready before it is done says nothing of what is ready afterwards
  return { do: 'say', text, pressed: { ...notPressed, before: reading } };
}
