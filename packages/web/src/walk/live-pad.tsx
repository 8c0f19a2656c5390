import {
  answerOf,
  liveText,
  notPressed,
  type Pressed,
  pressInTurn,
  readingIn,
  seenWhilePressed,
  type TurnNow,
  turnSaid,
  twoPresses,
  type WalkAnswer,
  type WalkMeter,
  type WalkStep,
} from '@coreward/bench';
import { type JSX, useEffect, useId, useState } from 'react';
import { useKeeping } from '../keeping/use-keeping.ts';
import { walkTexts } from '../texts/walk.ts';
import { usePause } from './use-pause.ts';

const words = walkTexts.live;

interface LivePadProps {
  readonly step: WalkStep;
  readonly meter: WalkMeter;
  readonly turn: TurnNow;
  readonly busy: boolean;
  /** Whether a press counts yet. */
  readonly isReady: boolean;
  readonly onAnswer: (answer: WalkAnswer) => void;
}

/** What was pressed in this step, kept up with the turn as the rule of two presses has it. */
function usePressed(isReady: boolean): readonly [Pressed, (pressed: Pressed) => void] {
  const { world } = useKeeping();
  const [pressed, setPressed] = useState(notPressed);
  useEffect(() => {
    if (!isReady) return undefined;
    const see = (): void => setPressed((before) => seenWhilePressed(before, true, world.clock()));
    see();
    // it was ready up to the moment in which it is not any more
    return see;
  }, [isReady, world]);
  const { askedAt } = pressed;
  // what the rule has forgotten is said no longer
  useEffect(() => {
    if (askedAt === null) return undefined;
    return world.after(twoPresses.waits, () => setPressed((before) => ({ ...before, askedAt: null })));
  }, [askedAt, world]);
  return [pressed, setPressed];
}

/**
 * The press that confirms what a live meter has come to; the button says what it takes. One press takes what is ready; what is
 * not is taken by a second one, which says against what.
 */
export function LivePad({ step, meter, turn, busy, isReady, onAnswer }: LivePadProps): JSX.Element {
  const { world } = useKeeping();
  const [pressed, setPressed] = usePressed(turn.isReady);
  const { before } = pressed;
  const isAsked = pressed.askedAt !== null && !turn.isReady;
  const instead = useId();
  // of two presses the second waits for what it is for to be read
  const isRested = usePause(`${before === null ? 'first' : 'second'} ${isAsked}`) && isReady;
  const { take } = turn;
  const reading = take === null ? null : readingIn(take);
  const isFirst = answerOf(step) === 'before-and-standing' && before === null;
  const written = reading === null ? null : liveText(reading, meter);
  const { insteadOf } = turnSaid(turn, step, meter);
  const isInstead = isAsked && take !== null;
  return (
    <>
      <button
        type="button"
        // an answer that is not ready can be given all the same, but does not ask for it
        className={turn.isReady ? 'big act take' : 'big take'}
        disabled={busy || take === null}
        aria-disabled={take !== null && !isRested}
        aria-describedby={isInstead ? instead : undefined}
        onClick={() => {
          if (!isRested) return;
          const came = pressInTurn(pressed, turn, step, world.clock());
          if (came.do === 'nothing') return;
          setPressed(came.do === 'answer' ? notPressed : came.pressed);
          if (came.do === 'answer') onAnswer(came.answer);
        }}
      >
        {take === null
          ? words.notYet
          : written === null
            ? walkTexts.done
            : isInstead
              ? words.takeInstead(written)
              : isFirst
                ? words.takeBefore(written)
                : words.take(written)}
      </button>
      {isInstead && (
        <p id={instead} role="alert" className="instead">
          {insteadOf} {words.pressAgain}
        </p>
      )}
    </>
  );
}
