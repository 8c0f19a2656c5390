import { readingWords } from '@coreward/bench';
import type { InstrumentDescription } from '@coreward/contract';
import { type JSX, useState } from 'react';
import { pathOf } from '../frame/address.ts';
import { PageHeading } from '../frame/page-heading.tsx';
import { instrumentTexts } from '../texts/instrument.ts';
import { AddInstrument } from './add-instrument.tsx';
import { InstrumentTag } from './instrument-tag.tsx';
import { StateMark } from './state-mark.tsx';
import { type InstrumentsHeld, useInstruments } from './use-instruments.ts';
import './instrument.css';

const here = pathOf({ page: 'instruments' });

/** What tells how much light there is: each instrument with its state and last reading, unfolding into the rest. */
export function InstrumentsPage(): JSX.Element {
  const held = useInstruments();
  const [open, setOpen] = useState<string | null>(() => window.location.hash.slice(1) || null);
  const unfold = (id: string | null): void => {
    setOpen(id);
    // the instrument that is unfolded is part of the address
    window.history.replaceState(null, '', id === null ? here : `${here}#${id}`);
  };
  return (
    <>
      <PageHeading title={instrumentTexts.title} />
      <p>{instrumentTexts.intro}</p>
      {held.state === 'waiting' && <p className="quiet">{instrumentTexts.waiting}</p>}
      {held.state === 'failed' && <p role="alert">{instrumentTexts.failed}</p>}
      {held.state === 'held' && (
        <>
          {held.instruments.length === 0 ? (
            <p>{instrumentTexts.none}</p>
          ) : (
            <ul className="instruments" aria-label={instrumentTexts.list}>
              {held.instruments.map((one) => (
                <Row key={one.id} instrument={one} acts={held} open={open === one.id} onOpen={unfold} />
              ))}
            </ul>
          )}
          <AddInstrument acts={held} onAdded={unfold} />
        </>
      )}
    </>
  );
}

function Row({
  instrument,
  acts,
  open,
  onOpen,
}: {
  readonly instrument: InstrumentDescription;
  readonly acts: InstrumentsHeld;
  readonly open: boolean;
  readonly onOpen: (id: string | null) => void;
}): JSX.Element {
  const { id, name, kind, unit, lastReading } = instrument;
  const value = lastReading?.value ?? null;
  return (
    <li id={id}>
      <button
        type="button"
        className="instrument"
        aria-expanded={open}
        onClick={() => onOpen(open ? null : id)}
      >
        <span className="instrument-name">{name}</span>
        <span className="quiet">{instrumentTexts.kinds[kind].word}</span>
        <StateMark instrument={instrument} />
        <span className="instrument-reading">{value === null ? '–' : readingWords(value, unit)}</span>
      </button>
      {open && <InstrumentTag instrument={instrument} acts={acts} />}
    </li>
  );
}
