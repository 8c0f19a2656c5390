import { floorOf } from '@coreward/bench';
import type { InstrumentDescription, InstrumentSetup, WriteInstrument } from '@coreward/contract';
import { type FormEvent, type JSX, useCallback, useRef, useState } from 'react';
import { useKept } from '../keeping/use-keeping.ts';
import { instrumentTexts } from '../texts/instrument.ts';
import { DetectorWatts } from './detector-watts.tsx';
import { InstrumentFacts } from './instrument-facts.tsx';
import { kinds, opensSomething } from './kinds.ts';
import { SaturationField } from './saturation-field.tsx';
import { TraceView } from './trace-view.tsx';
import type { InstrumentsHeld } from './use-instruments.ts';
import { useReadings } from './use-readings.ts';
import { heldLength } from './use-trace.ts';

/** One instrument unfolded: what it reads now, over time, and what can be done with it. */
export function InstrumentTag({
  instrument,
  acts,
}: {
  readonly instrument: InstrumentDescription;
  readonly acts: InstrumentsHeld;
}): JSX.Element {
  const { id, kind, unit, state, floor } = instrument;
  const held = useReadings(id, heldLength);
  const here = useKept().you === 'here';
  const [said, setSaid] = useState<string | null>(null);
  const Poster = kinds[kind]?.Poster ?? null;
  const isOn = state !== 'off';
  const maySwitch = here || isOn || !opensSomething(kind);

  /** Changes what is kept of it, one change behind the other: each begins with what the one before has left. */
  const queue = useRef<Promise<unknown>>(Promise.resolve());
  const change = useCallback(
    async (changes: Partial<WriteInstrument>): Promise<boolean> => {
      const changing = queue.current.then(async () => {
        const before = await acts.one(id);
        if (!before.ok) return before;
        const { instrument: now, setup } = before.answer;
        const { name, floor: ownFloor, saturation } = now;
        return acts.write(id, { name, setup, floor: ownFloor, saturation, ...changes });
      });
      queue.current = changing;
      const result = await changing;
      setSaid(result.ok ? null : result.said);
      return result.ok;
    },
    [acts, id],
  );
  const takeFloor = async (): Promise<void> => {
    const found = floorOf(held.readings);
    if (found === null) setSaid(instrumentTexts.floor.none);
    else if (await change({ floor: found.floor })) setSaid(instrumentTexts.floor.taken(found.count));
  };
  return (
    <div className="instrument-tag">
      <InstrumentFacts instrument={instrument} />
      <DetectorWatts instrument={instrument} />
      <p className="choices">
        <button
          type="button"
          className={isOn ? '' : 'act'}
          disabled={!maySwitch}
          onClick={async () => {
            const result = await acts.switch(id, !isOn);
            setSaid(result.ok ? null : result.said);
          }}
        >
          {isOn ? instrumentTexts.off : instrumentTexts.on}
        </button>
        {unit !== 'step' && (
          <button type="button" onClick={() => void takeFloor()} title={instrumentTexts.floor.text}>
            {instrumentTexts.floor.take}
          </button>
        )}
        {floor !== null && (
          <button type="button" className="quiet-button" onClick={() => void change({ floor: null })}>
            {instrumentTexts.floor.forget}
          </button>
        )}
      </p>
      {!maySwitch && <p className="quiet">{instrumentTexts.onlyThere}</p>}
      <p role="status" className="said">
        {said}
      </p>
      {Poster !== null && isOn && <Poster unit={unit} held={held} />}
      <TraceView instrument={instrument} held={held} />
      <details className="more">
        <summary>{instrumentTexts.setup}</summary>
        <NameForm name={instrument.name} onName={(name) => change({ name })} />
        {unit !== 'step' && (
          <SaturationField
            unit={unit}
            saturation={instrument.saturation}
            lastReading={instrument.lastReading?.value ?? null}
            onKeep={(saturation) => change({ saturation })}
          />
        )}
        {kinds[kind]?.changes === true && here && (
          <ChangeSetup instrument={instrument} acts={acts} onKeep={(setup) => change({ setup })} />
        )}
        <PutAway onPutAway={() => void acts.putAway(id)} />
      </details>
    </div>
  );
}

function NameForm({
  name,
  onName,
}: {
  readonly name: string;
  readonly onName: (name: string) => Promise<boolean>;
}): JSX.Element {
  const [written, setWritten] = useState(name);
  const keep = (event: FormEvent): void => {
    event.preventDefault();
    if (written.trim() !== '') void onName(written.trim());
  };
  return (
    <form className="setup-row" onSubmit={keep}>
      <label className="setup-field">
        <span>{instrumentTexts.name}</span>
        <input
          type="text"
          autoComplete="off"
          maxLength={200}
          value={written}
          onChange={({ target }) => setWritten(target.value)}
        />
      </label>
      <button type="submit" disabled={written.trim() === '' || written.trim() === name}>
        {instrumentTexts.rename}
      </button>
    </form>
  );
}

/** The setup of a device, which is asked for only when it is to be changed. */
function ChangeSetup({
  instrument: { id, kind },
  acts,
  onKeep,
}: {
  readonly instrument: InstrumentDescription;
  readonly acts: InstrumentsHeld;
  readonly onKeep: (setup: InstrumentSetup) => Promise<boolean>;
}): JSX.Element {
  const [initial, setInitial] = useState<InstrumentSetup | null>(null);
  const [setup, setSetup] = useState<InstrumentSetup | null>(null);
  const Setup = kinds[kind]?.Setup;
  if (initial === null || Setup === undefined) {
    return (
      <p>
        <button
          type="button"
          onClick={async () => {
            const found = await acts.one(id);
            if (found.ok) setInitial(found.answer.setup);
          }}
        >
          {instrumentTexts.changeSetup}
        </button>
      </p>
    );
  }
  return (
    <fieldset className="setup-group">
      <legend>{instrumentTexts.changeSetup}</legend>
      <Setup initial={initial} onSetup={setSetup} />
      <p className="choices">
        <button
          type="button"
          className="act"
          disabled={setup === null}
          onClick={async () => {
            if (setup !== null && (await onKeep(setup))) setInitial(null);
          }}
        >
          {instrumentTexts.keepSetup}
        </button>
        <button type="button" onClick={() => setInitial(null)}>
          {instrumentTexts.leaveSetup}
        </button>
      </p>
    </fieldset>
  );
}

function PutAway({ onPutAway }: { readonly onPutAway: () => void }): JSX.Element {
  const [asked, setAsked] = useState(false);
  if (!asked) {
    return (
      <p>
        <button type="button" className="quiet-button" onClick={() => setAsked(true)}>
          {instrumentTexts.putAway}
        </button>{' '}
        <span className="quiet small">{instrumentTexts.putAwayText}</span>
      </p>
    );
  }
  return (
    <p className="choices">
      <button type="button" onClick={onPutAway}>
        {instrumentTexts.putAwaySure}
      </button>
      <button type="button" onClick={() => setAsked(false)}>
        {instrumentTexts.keepIt}
      </button>
    </p>
  );
}
