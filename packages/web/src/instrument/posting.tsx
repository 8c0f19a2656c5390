import { readTypedReading } from '@coreward/bench';
import { type FormEvent, type JSX, useId, useRef, useState } from 'react';
import { useKeeping } from '../keeping/use-keeping.ts';
import { instrumentTexts } from '../texts/instrument.ts';
import type { PosterProps } from './kind-parts.ts';

/** Sends one reading; a try whose answer was lost keeps its name, so that it is kept once. */
function usePost({ post }: PosterProps['held']) {
  const { world } = useKeeping();
  const unanswered = useRef<{ readonly value: number; readonly write: string } | null>(null);
  const [busy, setBusy] = useState(false);
  const [said, setSaid] = useState<string | null>(null);
  const send = async (value: number): Promise<boolean> => {
    const write = unanswered.current?.value === value ? unanswered.current.write : world.newId();
    unanswered.current = { value, write };
    setBusy(true);
    const sent = await post([{ ago: 0, value, saturated: false }], write);
    setBusy(false);
    setSaid(sent.ok ? null : sent.said);
    if (sent.ok) unanswered.current = null;
    return sent.ok;
  };
  return { busy, said, setSaid, send };
}

/** A number read off a meter. */
export function TypedForm({ unit, held }: PosterProps): JSX.Element {
  const field = useId();
  const [written, setWritten] = useState('');
  const { busy, said, setSaid, send } = usePost(held);
  const before = held.readings.findLast(({ value }) => value !== null)?.value ?? null;
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (busy || written.trim() === '') return;
    const read = readTypedReading(written, unit, before);
    if (!read.ok) setSaid(`${read.what}. ${read.mend}`);
    else if (await send(read.value)) setWritten((now) => (now === written ? '' : now));
  };
  const words = instrumentTexts.typed;
  return (
    <form className="poster" onSubmit={(event) => void submit(event)}>
      <label htmlFor={field}>{words.label}</label>
      <input
        id={field}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        aria-invalid={said === null ? undefined : true}
        aria-describedby={`${field}-said`}
        value={written}
        onChange={({ target }) => {
          setWritten(target.value);
          setSaid(null);
        }}
      />
      <button type="submit" className="big act">
        {words.keep}
      </button>
      <p
        id={`${field}-said`}
        className={said === null ? 'quiet' : 'refusal'}
        role={said === null ? undefined : 'alert'}
      >
        {said ?? words.hint}
      </p>
    </form>
  );
}

/** Brighter, the same, dimmer: a reading of an eye. */
export function EyePad({ held }: PosterProps): JSX.Element {
  const { busy, said, send } = usePost(held);
  const words = instrumentTexts.eye;
  return (
    <div className="poster">
      <p className="quiet">{words.text}</p>
      <div className="pad">
        {([1, 0, -1] as const).map((step) => (
          <button key={step} type="button" className="big" disabled={busy} onClick={() => void send(step)}>
            {step === 1 ? words.brighter : step === 0 ? words.same : words.dimmer}
          </button>
        ))}
      </div>
      {said !== null && (
        <p role="alert" className="refusal">
          {said}
        </p>
      )}
    </div>
  );
}
