import { readsText, type WalkReads } from '@coreward/bench';
import type { ChosenReads, InstrumentDescription } from '@coreward/contract';
import { type JSX, useState } from 'react';
import { walkTexts } from '../texts/walk.ts';
import { ReadsChoice } from './reads-choice.tsx';
import type { WalkHeld } from './use-walk.ts';

const words = walkTexts.reads;

/** What was chosen, in the words of the choice. */
export function chosenOf({ instrument, meter }: WalkReads): ChosenReads {
  if (instrument !== null) return { by: 'instrument', id: instrument };
  return meter === 'eye' ? { by: 'eye' } : { by: 'typed' };
}

/** What reads the light now, and how to change it on the way. */
export function ReadsChange({
  reads,
  instruments,
  held,
}: {
  readonly reads: WalkReads;
  readonly instruments: readonly InstrumentDescription[];
  readonly held: WalkHeld;
}): JSX.Element {
  const now = chosenOf(reads);
  const [draft, setDraft] = useState<ChosenReads | null>(null);
  const chosen = draft ?? now;
  const found = instruments.find(({ id }) => id === reads.instrument);
  const choose = (anew: boolean): void => {
    setDraft(null);
    held.reads({
      reads: chosen,
      goesOn: reads.goesOn || chosen.by === 'instrument' ? reads.goesOn : false,
      anew,
    });
  };
  return (
    <details className="reads">
      <summary>
        {readsText(reads.meter, found?.name ?? (reads.instrument === null ? null : words.away))}
      </summary>
      <ReadsChoice chosen={chosen} instruments={instruments} onChoose={setDraft} />
      <p className="quiet">{words.changeText}</p>
      <div className="pad">
        <button
          type="button"
          className="big"
          disabled={held.busy || draft === null}
          onClick={() => choose(false)}
        >
          {words.change}
        </button>
        <button type="button" className="big" disabled={held.busy} onClick={() => choose(true)}>
          {words.anew}
        </button>
      </div>
    </details>
  );
}
