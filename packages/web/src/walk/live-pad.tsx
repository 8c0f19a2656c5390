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

/** Whether an answer that is not ready was pressed a moment ago, and is taken by one more press. */
function useAsked(isReady: boolean): readonly [boolean, (asked: boolean) => void] {
  const { world } = useKeeping();
  const [asked, setAsked] = useState(false);
  useEffect(() => (asked ? world.after(twoPresses.waits, () => setAsked(false)) : undefined), [asked, world]);
  // what has become ready needs no second press, and what leaves its goal later needs two again
  if (asked && isReady) setAsked(false);
  return [asked && !isReady, setAsked];
}

/** Whether it is ready, or was a moment ago: readings near a goal waver. */
function useReadyLately(isReady: boolean): boolean {
  const { world } = useKeeping();
  const [lately, setLately] = useState(isReady);
  useEffect(() => {
    if (!isReady) return world.after(twoPresses.reaction, () => setLately(false));
    setLately(true);
    return undefined;
  }, [isReady, world]);
  return isReady || lately;
}

/**
 * The press that confirms what a live meter has come to; the button says what it takes. One press takes what is ready; what is
 * not is taken by a second one, which says against what.
 */
export function LivePad({ step, meter, turn, busy, isReady, onAnswer }: LivePadProps): JSX.Element {
  /** The first of two readings that a step asks for. */
  const [before, setBefore] = useState<number | null>(null);
  const takesAtOnce = useReadyLately(turn.isReady);
  const [isAsked, setAsked] = useAsked(takesAtOnce);
  const instead = useId();
  // of two presses the second waits for what it is for to be read
  const isRested = usePause(`${before === null ? 'first' : 'second'} ${isAsked}`) && isReady;
  const { take } = turn;
  const reading = take?.outcome === 'did' ? (take.highest ?? take.standing ?? null) : null;
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
          if (take === null || !isRested) return;
          if (!takesAtOnce && !isAsked) {
            setAsked(true);
            return;
          }
          setAsked(false);
          if (isFirst) setBefore(reading);
          else onAnswer(before === null || take.outcome !== 'did' ? take : { ...take, before });
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
