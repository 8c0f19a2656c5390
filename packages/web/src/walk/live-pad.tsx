import {
  answerOf,
  liveText,
  type TurnNow,
  type WalkAnswer,
  type WalkMeter,
  type WalkStep,
} from '@coreward/bench';
import { type JSX, useState } from 'react';
import { walkTexts } from '../texts/walk.ts';
import { usePause } from './use-pause.ts';

interface LivePadProps {
  readonly step: WalkStep;
  readonly meter: WalkMeter;
  readonly turn: TurnNow;
  readonly busy: boolean;
  /** Whether a press counts yet. */
  readonly isReady: boolean;
  readonly onAnswer: (answer: WalkAnswer) => void;
}

/** The one press that confirms what a live meter has come to; the button says what it takes. */
export function LivePad({ step, meter, turn, busy, isReady, onAnswer }: LivePadProps): JSX.Element {
  /** The first of two readings that a step asks for. */
  const [before, setBefore] = useState<number | null>(null);
  // of two readings the second waits for a press of its own
  const isRested = usePause(before === null ? 'first' : 'second') && isReady;
  const { take } = turn;
  const reading = take?.outcome === 'did' ? (take.highest ?? take.standing ?? null) : null;
  const isFirst = answerOf(step) === 'before-and-standing' && before === null;
  const written = reading === null ? null : liveText(reading, meter);
  return (
    <button
      type="button"
      // an answer that is not ready can be given all the same, but does not ask for it
      className={turn.isReady ? 'big act take' : 'big take'}
      disabled={busy || take === null}
      aria-disabled={take !== null && !isRested}
      onClick={() => {
        if (take === null || !isRested) return;
        if (isFirst) setBefore(reading);
        else onAnswer(before === null || take.outcome !== 'did' ? take : { ...take, before });
      }}
    >
      {take === null
        ? walkTexts.live.notYet
        : written === null
          ? walkTexts.done
          : isFirst
            ? walkTexts.live.takeBefore(written)
            : walkTexts.live.take(written)}
    </button>
  );
}
