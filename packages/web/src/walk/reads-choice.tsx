import { meterCounting } from '@coreward/bench';
import type { ChosenReads, InstrumentDescription } from '@coreward/contract';
import { type JSX, useId } from 'react';
import { PageLink } from '../frame/navigation.tsx';
import { StateMark } from '../instrument/state-mark.tsx';
import { walkTexts } from '../texts/walk.ts';
import '../instrument/instrument.css';

const words = walkTexts.reads;

/** What may read the light of a walk: a hand, an eye, or an instrument of the bench book. */
export function ReadsChoice({
  chosen,
  instruments,
  onChoose,
}: {
  readonly chosen: ChosenReads;
  readonly instruments: readonly InstrumentDescription[];
  readonly onChoose: (chosen: ChosenReads) => void;
}): JSX.Element {
  const name = useId();
  // an eye's steps are no measure: to walk by eye is a choice of its own
  const measuring = instruments.filter(({ unit }) => meterCounting(unit) !== null);
  return (
    <fieldset className="reads-choice">
      <legend>{words.title}</legend>
      {measuring.map((instrument) => (
        <label key={instrument.id}>
          <input
            type="radio"
            name={name}
            checked={chosen.by === 'instrument' && chosen.id === instrument.id}
            onChange={() => onChoose({ by: 'instrument', id: instrument.id })}
          />
          <span>
            {instrument.name} <StateMark instrument={instrument} />
          </span>
        </label>
      ))}
      {(['typed', 'eye'] as const).map((by) => (
        <label key={by}>
          <input type="radio" name={name} checked={chosen.by === by} onChange={() => onChoose({ by })} />
          {words[by]}
        </label>
      ))}
      {instruments
        .filter(({ unit }) => meterCounting(unit) === null)
        .map(({ id, name: eye }) => (
          <p key={id} className="quiet small">
            {words.byEye(eye)}
          </p>
        ))}
      <p className="facts">
        <PageLink to={{ page: 'instruments' }}>
          {measuring.length === 0 ? words.addFirst : words.add}
        </PageLink>
      </p>
    </fieldset>
  );
}
