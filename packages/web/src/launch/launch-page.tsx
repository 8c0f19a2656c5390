import {
  type Glance,
  glance,
  headline,
  type Launch,
  type LengthToTurn,
  launchWith,
  lightLine,
  type Moved,
  placesRefused,
  Refusal,
  type RefusedPlace,
  readLaunch,
  unbroken,
  withRanges,
} from '@coreward/bench';
import { type JSX, lazy, memo, Suspense, useEffect, useMemo, useRef, useState } from 'react';
import { LineHazards } from '../cautions/line-hazards.tsx';
import { launchTexts } from '../texts/launch.ts';
import { accentFor } from '../theme/accent.ts';
import { FocusView } from './focus-view.tsx';
import type { LaunchPageProps } from './launch-page-props.ts';
import { LineView } from './line-view.tsx';
import { MeasureNext } from './measure-next.tsx';
import { Blocks, SectionView } from './section-view.tsx';
import { Stairs } from './stairs.tsx';
import { Tag } from './tag.tsx';
import type { ToldForecast } from './told-forecast.ts';
import { type ForecastState, useForecast } from './use-forecast.ts';
import { useRehearsal } from './use-rehearsal.ts';
import { useRested } from './use-rested.ts';
import './launch.css';

// The light can be pressed and turned before it is walked for its hazards, a fifth sooner than after it (`npm run bench:web`).
// Their code comes with the page all the same: where the station went away in between, a caution would be missing.
const LateHazards = lazy(async () => ({ default: memo(LineHazards) }));

type Seen<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refused: readonly RefusedPlace[] };

/** One launch: its light, its parts, its ledger and what to expect of it. */
export function LaunchPage({ id, text, onChange, parts }: LaunchPageProps): JSX.Element {
  const [chosen, setChosen] = useState<string | null>(null);
  const [hand, setHand] = useState<{ readonly key: string; readonly value: number } | null>(null);
  const read = useMemo(() => attempt(() => readLaunch(text, 'launch')), [text]);
  // the first of all: its worker is loaded while the page works out what it shows
  const asked = useForecast(text, hand);
  const seen = useGlance(read, hand);
  const { forecast } = asked;
  useAccent(seen?.meeting.wavelength ?? null);
  const line = useMemo(() => {
    if (seen === null) return null;
    const ledger = forecast === null ? seen.ledger : withRanges(seen.ledger, forecast.ledger);
    return lightLine({ ...seen, ledger });
  }, [seen, forecast]);
  const rested = useRested(line, hand !== null);
  useRehearsal(
    chosen !== null && hand === null && seen !== null ? () => lightLine(glance(seen.launch, seen)) : null,
  );
  const limits = useMemo(() => forecast !== null && <Blocks blocks={forecast.limits} />, [forecast]);

  if (!read.ok || seen === null || line === null || rested === null) {
    const refused = read.ok ? [] : read.refused;
    return (
      <div className="launch">
        <h2>{launchTexts.refused}</h2>
        <ul>
          {refused.map(({ place, what, mend }) => (
            <li key={place + what}>
              {place}: {what}. {mend}
            </li>
          ))}
        </ul>
      </div>
    );
  }
  const laserPower = seen.launch.laser.power.value;
  const part = line.parts.find(({ id }) => id === chosen) ?? null;
  const close = () => {
    const button = document.getElementById(`part-${chosen}`);
    setChosen(null);
    button?.focus();
  };
  return (
    <div className={asked.state === 'fresh' ? 'launch' : 'launch stale'}>
      <header className="launch-head">
        <Answer seen={seen} asked={asked} />
        {limits}
      </header>
      <LineView
        line={line}
        rested={rested}
        laserPower={laserPower}
        inHand={hand !== null}
        ranges={forecast === null ? asked.state : 'fresh'}
        chosen={chosen}
        onChoose={setChosen}
        // of the launch as it is kept: a hand on its way would have it computed anew at every turn
        hazards={(places) => (
          <Suspense fallback={null}>
            <LateHazards id={id} launch={read.value} parts={rested.parts} {...places} />
          </Suspense>
        )}
      />
      {part !== null && (
        <Tag
          key={part.id}
          part={part}
          text={text}
          parts={parts}
          onChange={onChange}
          onHold={(length: LengthToTurn, moved: Moved | null) =>
            setHand(moved === null ? null : { key: length.key, value: moved.value })
          }
          onClose={close}
        />
      )}
      <div className="launch-middle">
        <Stairs parts={rested.parts} laserPower={laserPower} chosen={chosen} onChoose={setChosen} />
        <FocusView focus={line.focus} />
      </div>
      {forecast !== null && (
        <div className="launch-below">
          <Words id={id} forecast={forecast} />
        </div>
      )}
    </div>
  );
}

function Answer({ seen, asked }: { readonly seen: Glance; readonly asked: ForecastState }): JSX.Element {
  const { forecast, state, takesLong, stop, again } = asked;
  const value = seen.outputPower;
  const range = forecast?.power;
  const power = { value, low: range?.low ?? value, high: range?.high ?? value };
  const told = headline(power, seen.budget.output);
  return (
    <>
      <p className="answer" aria-live="polite" aria-busy={state === 'coming'}>
        <strong>{told.power}</strong> {launchTexts.leavesFarEnd}{' '}
        <span className="range">
          {forecast === null
            ? launchTexts.noRange[state]
            : told.range !== null && launchTexts.range(unbroken(told.range))}
        </span>
        <span className="share">{launchTexts.ofLaser(told.share)}</span>
        {!accentFor(seen.meeting.wavelength).visible && (
          <span className="share">{launchTexts.invisible}</span>
        )}
      </p>
      {state === 'coming' && takesLong && (
        <p className="quiet">
          {launchTexts.takesLong}{' '}
          <button type="button" className="quiet-button" onClick={stop}>
            {launchTexts.stop}
          </button>
        </p>
      )}
      {(state === 'stopped' || state === 'failed') && (
        <p className="quiet" role="status">
          {state === 'failed' ? launchTexts.failed : launchTexts.stopped(forecast !== null)}{' '}
          <button type="button" className="quiet-button" onClick={again}>
            {launchTexts.again}
          </button>
        </p>
      )}
    </>
  );
}

/** Worked out once for each forecast: a hand that moves the light leaves it alone. */
const Words = memo(function Words({
  id,
  forecast,
}: {
  readonly id: string;
  readonly forecast: ToldForecast;
}): JSX.Element {
  return (
    <>
      {forecast.remarks.map((section) => (
        <SectionView key={section.heading} section={section} />
      ))}
      <MeasureNext id={id} measureNext={forecast.measureNext} />
      <SectionView section={forecast.cautions} className="words cautions" />
      <details>
        <summary>{launchTexts.more}</summary>
        {forecast.more.map((section) => (
          <SectionView key={section.heading} section={section} />
        ))}
      </details>
    </>
  );
});

/** The light at the stated values, the hand's included; null where there is none to see. */
function useGlance(read: Seen<Launch>, hand: { readonly key: string; readonly value: number } | null) {
  const before = useRef<Glance | null>(null);
  return useMemo(() => {
    if (!read.ok) return null;
    const launch = hand === null ? read.value : launchWith(read.value, hand.key, hand.value);
    const seen = attempt(() => glance(launch, before.current));
    if (seen.ok) before.current = seen.value;
    return before.current;
  }, [read, hand]);
}

function useAccent(wavelength: number | null): void {
  useEffect(() => {
    if (wavelength === null) return;
    document.documentElement.style.setProperty('--accent', accentFor(wavelength).colour);
  }, [wavelength]);
}

function attempt<T>(work: () => T): Seen<T> {
  try {
    return { ok: true, value: work() };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return { ok: false, refused: placesRefused(error) };
  }
}
