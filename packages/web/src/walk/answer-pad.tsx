import {
  answerOf,
  type Brightness,
  readingByEye,
  readReading,
  stepSentence,
  type TurnNow,
  type WalkAnswer,
  type WalkMeter,
  type WalkNow,
  type WalkStep,
} from '@coreward/bench';
import { type FormEvent, type JSX, useId, useState } from 'react';
import { walkTexts } from '../texts/walk.ts';
import { LivePad } from './live-pad.tsx';

interface AnswerPadProps {
  readonly now: WalkNow;
  readonly step: WalkStep;
  readonly meter: WalkMeter;
  /** Where the step stands by a live meter; null: none reads. */
  readonly turn: TurnNow | null;
  readonly busy: boolean;
  readonly onAnswer: (answer: WalkAnswer) => void;
}

/** The buttons of one step, for a wet thumb: done, with its reading where one is asked, did not work, skip. */
export function AnswerPad(props: AnswerPadProps): JSX.Element {
  const { step, meter, now, turn, busy, onAnswer } = props;
  const needs = answerOf(step);
  return (
    <div className="pad">
      {turn !== null ? (
        <LivePad step={step} meter={meter} turn={turn} busy={busy} onAnswer={onAnswer} />
      ) : needs === null ? (
        <button
          type="button"
          className="big act"
          disabled={busy}
          onClick={() => onAnswer({ outcome: 'did' })}
        >
          {walkTexts.done}
        </button>
      ) : meter === 'eye' ? (
        <ByEye now={now} busy={busy} needs={needs} onAnswer={onAnswer} />
      ) : (
        <WithReading {...props} />
      )}
      <button
        type="button"
        className="big"
        disabled={busy}
        onClick={() => onAnswer({ outcome: 'did-not-work' })}
      >
        {walkTexts.didNotWork}
      </button>
      <button type="button" className="big" disabled={busy} onClick={() => onAnswer({ outcome: 'skipped' })}>
        {walkTexts.skip}
      </button>
    </div>
  );
}

function WithReading({ step, meter, now, busy, onAnswer }: AnswerPadProps): JSX.Element {
  const field = useId();
  const [written, setWritten] = useState('');
  const [before, setBefore] = useState('');
  const [refused, setRefused] = useState<string | null>(null);
  const needs = answerOf(step);
  const asks = stepSentence(step, meter).asks ?? walkTexts.reading;
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const said = readReading(written, meter, now.last);
    const first = needs === 'before-and-standing' ? readReading(before, meter, now.last) : null;
    for (const read of [first, said]) {
      if (read !== null && !read.ok) {
        setRefused(`${read.what}. ${read.mend}`);
        return;
      }
    }
    if (!said.ok) return;
    const { reading } = said;
    onAnswer({
      outcome: 'did',
      ...(needs === 'highest' ? { highest: reading } : { standing: reading }),
      ...(first?.ok === true ? { before: first.reading } : {}),
    });
  };
  return (
    <form className="with-reading" onSubmit={submit}>
      {needs === 'before-and-standing' && (
        <>
          <label htmlFor={`${field}-before`}>{walkTexts.before}</label>
          <input
            id={`${field}-before`}
            type="text"
            inputMode="decimal"
            autoComplete="off"
            value={before}
            onChange={({ target }) => setBefore(target.value)}
          />
        </>
      )}
      <label htmlFor={field}>{asks}</label>
      <input
        id={field}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        aria-invalid={refused === null ? undefined : true}
        aria-describedby={refused === null ? undefined : `${field}-refused`}
        value={written}
        onChange={({ target }) => {
          setWritten(target.value);
          setRefused(null);
        }}
      />
      {refused !== null && (
        <p id={`${field}-refused`} role="alert">
          {refused}
        </p>
      )}
      <button type="submit" className="big act" disabled={busy}>
        {walkTexts.done}
      </button>
    </form>
  );
}

function ByEye({
  now,
  busy,
  needs,
  onAnswer,
}: Pick<AnswerPadProps, 'now' | 'busy' | 'onAnswer'> & {
  readonly needs: NonNullable<ReturnType<typeof answerOf>>;
}): JSX.Element {
  const ways: readonly (readonly [Brightness, string])[] = [
    ['brighter', walkTexts.brighter],
    ['same', walkTexts.same],
    ['dimmer', walkTexts.dimmer],
  ];
  return (
    <>
      {ways.map(([seen, word]) => (
        <button
          key={seen}
          type="button"
          className="big act"
          disabled={busy}
          onClick={() => {
            const reading = readingByEye(now.moves, seen);
            onAnswer({
              outcome: 'did',
              ...(needs === 'highest' ? { highest: reading } : { standing: reading }),
            });
          }}
        >
          {word}
        </button>
      ))}
    </>
  );
}
