import {
  liveText,
  readingText,
  type TurnNow,
  turnSaid,
  type WalkMeter,
  type WalkStep,
} from '@coreward/bench';
import type { InstrumentDescription } from '@coreward/contract';
import { type JSX, useState } from 'react';
import type { InstrumentsHeld } from '../instrument/use-instruments.ts';
import { walkTexts } from '../texts/walk.ts';

const words = walkTexts.live;

/** The reading as large as fits, and what it says to the hand. */
export function LiveReading({
  turn,
  step,
  meter,
}: {
  readonly turn: TurnNow;
  readonly step: WalkStep;
  readonly meter: WalkMeter;
}): JSX.Element {
  const { short, mend } = turnSaid(turn, step, meter);
  return (
    <div className="live" data-sign={turn.sign}>
      <p className="reading-large">
        <output>{turn.shown === null ? '–' : liveText(turn.shown, meter)}</output>
      </p>
      <div aria-live="polite">
        <p className="sign">{short}</p>
        {mend !== null && <p className="mend">{mend}</p>}
      </div>
    </div>
  );
}

/** What was last read where no instrument is listened to. */
export function LastReading({
  shown,
  isOver,
  meter,
}: {
  readonly shown: number | null;
  /** Whether nothing more is asked. */
  readonly isOver: boolean;
  readonly meter: WalkMeter;
}): JSX.Element {
  return (
    <p className="reading-large">
      <span className="quiet">{isOver ? walkTexts.last : walkTexts.now}</span>{' '}
      <output>{shown === null ? '–' : readingText(shown, meter)}</output>
    </p>
  );
}

/** The best there was: of this turn, where one goes on, and of the walk. */
export function BestReading({
  turn,
  best,
  meter,
}: {
  readonly turn: TurnNow | null;
  /** Of the whole walk. */
  readonly best: number | null;
  readonly meter: WalkMeter;
}): JSX.Element {
  const held = turn?.held ?? null;
  return (
    <p className="reading-best">
      {held !== null && `${words.held} ${readingText(held, meter)} · `}
      {walkTexts.best} {best === null ? walkTexts.nothing : readingText(best, meter)}
    </p>
  );
}

/** Why nothing comes from an instrument, and what to do about it. */
export function InstrumentTrouble({
  instrument,
  instruments,
}: {
  readonly instrument: InstrumentDescription;
  readonly instruments: InstrumentsHeld;
}): JSX.Element | null {
  const [refused, setRefused] = useState<string | null>(null);
  const { state, trouble, id, name } = instrument;
  if (state === 'reading') return null;
  return (
    <div role="alert" className="refusal">
      {state === 'off' ? (
        <>
          <p>{words.isOff(name)}</p>
          <button
            type="button"
            className="big"
            onClick={async () => {
              const done = await instruments.switch(id, true);
              setRefused(done.ok ? null : done.said);
            }}
          >
            {words.switchOn}
          </button>
        </>
      ) : (
        <p>{trouble === null ? words.silent(name) : `${name}: ${trouble.what}. ${trouble.mend}`}</p>
      )}
      {refused !== null && <p>{refused}</p>}
    </div>
  );
}
