import {
  columnsToFill,
  currentReading,
  type Gauge,
  type Grid,
  nextRow,
  noiseWords,
  readingWords,
  textOfGrid,
  withReadingTaken,
} from '@coreward/bench';
import { type JSX, useState } from 'react';
import { PageLink } from '../frame/navigation.tsx';
import { StateMark } from '../instrument/state-mark.tsx';
import { useInstruments } from '../instrument/use-instruments.ts';
import { useReadings } from '../instrument/use-readings.ts';
import { gaugeTexts } from '../texts/gauge.ts';
import '../instrument/instrument.css';

const words = gaugeTexts.live;

interface FromInstrumentProps {
  readonly gauge: Gauge;
  readonly grid: Grid;
  readonly onText: (text: string) => void;
}

/** What an instrument reads now, put into the next empty cell with one press. */
export function FromInstrument({ gauge, grid, onText }: FromInstrumentProps): JSX.Element {
  const { state, instruments } = useInstruments();
  const [id, setId] = useState('');
  const [column, setColumn] = useState<number | null>(null);
  const [step, setStep] = useState('');
  const [said, setSaid] = useState<string | null>(null);
  const measuring = instruments.filter(({ unit }) => unit !== 'step');
  const chosen = measuring.find((one) => one.id === id) ?? null;
  const held = useReadings(chosen?.id ?? null, 5_000);
  const now = chosen === null ? null : currentReading(held.readings);
  const columns = chosen === null ? [] : columnsToFill(gauge, grid, chosen.unit);
  const into = columns.find((one) => one === column) ?? columns[0] ?? null;
  const take = (): void => {
    if (chosen === null || now === null || into === null) return;
    const taken = withReadingTaken(grid, into, now, chosen, step);
    setSaid(taken.ok ? words.taken(taken.row + 1) : `${taken.what}. ${taken.mend}`.replaceAll('`', ''));
    if (taken.ok) onText(textOfGrid(taken.grid));
  };
  if (state !== 'held' || measuring.length === 0) {
    return (
      <p className="quiet">
        {state === 'waiting' ? words.waiting : words.none}{' '}
        <PageLink to={{ page: 'instruments' }}>{words.add}</PageLink>
      </p>
    );
  }
  return (
    <>
      <p className="facts">
        <label>
          {words.instrument}{' '}
          <select value={chosen?.id ?? ''} onChange={({ target }) => setId(target.value)}>
            <option value="">{gaugeTexts.choose}</option>
            {measuring.map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
              </option>
            ))}
          </select>
        </label>
        {chosen !== null && <StateMark instrument={chosen} />}
        {columns.length > 1 && (
          <label>
            {words.column}{' '}
            <select value={into ?? ''} onChange={({ target }) => setColumn(Number(target.value))}>
              {columns.map((one) => (
                <option key={one} value={one}>
                  {grid.headings[one]}
                </option>
              ))}
            </select>
          </label>
        )}
        {grid.headings.length > 1 && (
          <label>
            {words.step(grid.headings.find((_, i) => i !== into) ?? '')}{' '}
            <input
              className="entry short"
              type="text"
              autoComplete="off"
              inputMode="decimal"
              value={step}
              onChange={({ target }) => setStep(target.value)}
            />
          </label>
        )}
      </p>
      {chosen !== null && (
        <p>
          {now === null ? (
            <span className="quiet">{words.nothing}</span>
          ) : (
            <>
              <strong>{readingWords(now.value, chosen.unit)}</strong>{' '}
              {now.uncertainty !== null && words.doubt(noiseWords(now.uncertainty, chosen.unit, null))}{' '}
              <span className="quiet">{words.meanOf(now.count)}</span>
              {now.saturated && <span className="full"> {words.full}</span>}
            </>
          )}
        </p>
      )}
      {chosen !== null && into === null && <p>{words.noColumn(chosen.unit)}</p>}
      <p>
        <button
          type="button"
          className="act"
          disabled={now === null || now.saturated || into === null}
          onClick={take}
        >
          {into === null ? words.take : words.takeInto(grid.headings[into] ?? '', nextRow(grid, into) + 1)}
        </button>{' '}
        <span role="status">{said}</span>
      </p>
    </>
  );
}
