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

interface LivePadProps {
  readonly step: WalkStep;
  readonly meter: WalkMeter;
  readonly turn: TurnNow;
  readonly busy: boolean;
  readonly onAnswer: (answer: WalkAnswer) => void;
}

/** The one press that confirms what a live meter has come to; the button says what it takes. */
export function LivePad({ step, meter, turn, busy, onAnswer }: LivePadProps): JSX.Element {
  /** The first of two readings that a step asks for. */
  const [before, setBefore] = useState<number | null>(null);
  const { take } = turn;
  const reading = take?.outcome === 'did' ? (take.highest ?? take.standing ?? null) : null;
  const isFirst = answerOf(step) === 'before-and-standing' && before === null;
  const written = reading === null ? null : liveText(reading, meter);
  return (
    <button
      type="button"
      className="big act take"
      disabled={busy || take === null}
      onClick={() => {
        if (take === null) return;
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
