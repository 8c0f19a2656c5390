import { type InstrumentKind, type InstrumentSetup, instrumentKinds } from '@coreward/contract';
import { type JSX, useState } from 'react';
import { useKept } from '../keeping/use-keeping.ts';
import { instrumentTexts } from '../texts/instrument.ts';
import { kinds, opensSomething } from './kinds.ts';
import { Line } from './setup/choice.tsx';
import type { InstrumentsHeld } from './use-instruments.ts';

const words = instrumentTexts.add;

/** A new instrument: of which kind, how it is set up, and its name. */
export function AddInstrument({
  acts,
  onAdded,
}: {
  readonly acts: InstrumentsHeld;
  readonly onAdded: (id: string) => void;
}): JSX.Element {
  const here = useKept().you === 'here';
  const [kind, setKind] = useState<InstrumentKind | null>(null);
  const [setup, setSetup] = useState<InstrumentSetup | null>(null);
  const [written, setWritten] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const [said, setSaid] = useState<string | null>(null);
  const offered = instrumentKinds.filter((one) => kinds[one] !== undefined);
  const Setup = kind === null ? undefined : kinds[kind]?.Setup;
  const name = written ?? (kind === null ? '' : freeName(instrumentTexts.kinds[kind].name, acts));
  const choose = (one: InstrumentKind): void => {
    setKind(one);
    setSetup(null);
    setWritten(null);
    setSaid(null);
  };
  const add = async (): Promise<void> => {
    if (setup === null) return;
    setBusy(true);
    const made = await acts.write(null, { name: name.trim(), setup, floor: null, saturation: null });
    const begun = made.ok ? await acts.switch(made.answer.instrument.id, true) : made;
    setBusy(false);
    setSaid(begun.ok ? null : begun.said);
    if (!made.ok) return;
    setKind(null);
    setWritten(null);
    onAdded(made.answer.instrument.id);
  };
  return (
    <section className="add-instrument" aria-label={words.title}>
      <h2>{words.title}</h2>
      <fieldset className="kinds">
        <legend className="quiet">{words.kind}</legend>
        {offered.map((one) => (
          <label key={one}>
            <input
              type="radio"
              name="kind"
              checked={kind === one}
              disabled={busy || (!here && opensSomething(one))}
              onChange={() => choose(one)}
            />
            <span>
              {instrumentTexts.kinds[one].word}{' '}
              <span className="quiet small">{instrumentTexts.kinds[one].about}</span>
            </span>
          </label>
        ))}
      </fieldset>
      {!here && <p className="quiet">{instrumentTexts.onlyThere}</p>}
      {kind !== null && Setup !== undefined && (
        <form
          className="setup"
          onSubmit={(event) => {
            event.preventDefault();
            void add();
          }}
        >
          <Setup key={kind} initial={null} onSetup={setSetup} />
          <Line label={instrumentTexts.name} value={name} onChange={setWritten} />
          <p>
            <button type="submit" className="act" disabled={busy || setup === null || name.trim() === ''}>
              {words.act}
            </button>
          </p>
        </form>
      )}
      {said !== null && (
        <p role="alert" className="refusal">
          {said}
        </p>
      )}
    </section>
  );
}

/** With a number behind it where another instrument has that name. */
function freeName(name: string, { instruments }: InstrumentsHeld): string {
  const taken = new Set(instruments.map((one) => one.name));
  if (!taken.has(name)) return name;
  for (let number = 2; ; number += 1) if (!taken.has(`${name} ${number}`)) return `${name} ${number}`;
}
