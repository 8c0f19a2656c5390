import {
  answerOf,
  type Brightness,
  readingByEye,
  readingText,
  readReading,
  stepSentence,
  type TurnNow,
  type WalkAnswer,
  type WalkMeter,
  type WalkNow,
  type WalkStep,
} from '@coreward/bench';
import type { PostReadings } from '@coreward/contract';
import { type FormEvent, type JSX, useId, useRef, useState } from 'react';
import type { ReadingsHeld } from '../instrument/use-readings.ts';
import { useKeeping } from '../keeping/use-keeping.ts';
import { walkTexts } from '../texts/walk.ts';
import { LivePad } from './live-pad.tsx';

interface AnswerPadProps {
  readonly now: WalkNow;
  readonly step: WalkStep;
  readonly meter: WalkMeter;
  /** Where the step stands by a live meter; null: none reads. */
  readonly turn: TurnNow | null;
  /** An instrument whose readings are typed: what is typed here is kept as its reading, too. Null: there is none. */
  readonly typed: TypedFor | null;
  readonly busy: boolean;
  /** Whether a press counts yet. */
  readonly isReady: boolean;
  readonly onAnswer: (answer: WalkAnswer) => void;
}

/** A typed instrument as a step hears it. */
export interface TypedFor {
  /** Typed since the step was asked, on whatever page; null: nothing. */
  readonly heard: number | null;
  readonly post: ReadingsHeld['post'];
}

/** What answers one step, for a wet thumb: done, with its reading where one is asked. */
export function AnswerPad(props: AnswerPadProps): JSX.Element {
  const { step, meter, now, turn, busy, isReady } = props;
  const onAnswer = (answer: WalkAnswer): void => {
    if (isReady) props.onAnswer(answer);
  };
  const needs = answerOf(step);
  return (
    <div className="pad">
      {turn !== null ? (
        <LivePad step={step} meter={meter} turn={turn} busy={busy} isReady={isReady} onAnswer={onAnswer} />
      ) : needs === null ? (
        <button
          type="button"
          className="big act"
          disabled={busy}
          aria-disabled={!isReady}
          onClick={() => onAnswer({ outcome: 'did' })}
        >
          {walkTexts.done}
        </button>
      ) : meter === 'eye' ? (
        <ByEye now={now} busy={busy} isReady={isReady} needs={needs} onAnswer={onAnswer} />
      ) : (
        <WithReading {...props} onAnswer={onAnswer} />
      )}
    </div>
  );
}

/** Keeps what was typed as readings of the instrument; a try whose answer was lost keeps its name. Null, or what went wrong. */
function useTypedPost(typed: TypedFor | null): (values: readonly number[]) => Promise<string | null> {
  const { world } = useKeeping();
  const unanswered = useRef<{ readonly key: string; readonly write: string } | null>(null);
  return async (values) => {
    if (typed === null) return null;
    const key = values.join(' ');
    const write = unanswered.current?.key === key ? unanswered.current.write : world.newId();
    unanswered.current = { key, write };
    const readings: PostReadings['readings'] = values.map((value) => ({ ago: 0, value, saturated: false }));
    const sent = await typed.post(readings, write);
    return sent.ok ? null : sent.said;
  };
}

function WithReading({ step, meter, now, typed, busy, isReady, onAnswer }: AnswerPadProps): JSX.Element {
  const field = useId();
  const [written, setWritten] = useState('');
  const [before, setBefore] = useState('');
  const [refused, setRefused] = useState<string | null>(null);
  const [isSending, setSending] = useState(false);
  const post = useTypedPost(typed);
  const needs = answerOf(step);
  const asks = stepSentence(step, meter).asks ?? walkTexts.reading;
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (!isReady || isSending) return;
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
    setSending(true);
    const failed = await post(first?.ok === true ? [first.reading, reading] : [reading]);
    setSending(false);
    if (failed !== null) {
      setRefused(failed);
      return;
    }
    onAnswer({
      outcome: 'did',
      ...(needs === 'highest' ? { highest: reading } : { standing: reading }),
      ...(first?.ok === true ? { before: first.reading } : {}),
    });
  };
  return (
    <form className="with-reading" onSubmit={(event) => void submit(event)}>
      {typed !== null && typed.heard !== null && needs !== 'before-and-standing' && (
        <HeardReading
          heard={typed.heard}
          meter={meter}
          busy={busy || !isReady}
          onTake={(heard) =>
            onAnswer({ outcome: 'did', ...(needs === 'highest' ? { highest: heard } : { standing: heard }) })
          }
        />
      )}
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
      <button type="submit" className="big act" disabled={busy || isSending} aria-disabled={!isReady}>
        {walkTexts.done}
      </button>
    </form>
  );
}

/** A reading that was typed on another page, or before a connection was lost: one press takes it. */
function HeardReading({
  heard,
  meter,
  busy,
  onTake,
}: {
  readonly heard: number;
  readonly meter: WalkMeter;
  readonly busy: boolean;
  readonly onTake: (heard: number) => void;
}): JSX.Element {
  return (
    <button
      type="button"
      className="big act take"
      aria-disabled={busy}
      onClick={() => !busy && onTake(heard)}
    >
      {walkTexts.live.take(readingText(heard, meter))}
    </button>
  );
}

function ByEye({
  now,
  busy,
  isReady,
  needs,
  onAnswer,
}: Pick<AnswerPadProps, 'now' | 'busy' | 'isReady' | 'onAnswer'> & {
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
          aria-disabled={!isReady}
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
