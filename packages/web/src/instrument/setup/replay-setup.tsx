import { logWords, type MeterUnit, meterUnits } from '@coreward/bench';
import { mostLogCharacters } from '@coreward/contract';
import { type JSX, useEffect, useId, useMemo, useState } from 'react';
import { useNewest } from '../../keeping/use-newest.ts';
import { instrumentTexts } from '../../texts/instrument.ts';
import type { SetupProps } from '../kind-parts.ts';
import { Choice } from './choice.tsx';

const words = instrumentTexts.replay;
const speeds = Object.keys(words.speeds).map(Number);

/** A log from before, pasted or from a file, and how fast it is played. */
export function ReplaySetup({ onSetup }: SetupProps): JSX.Element {
  const field = useId();
  const [log, setLog] = useState('');
  const [unit, setUnit] = useState<MeterUnit>('W');
  const [speed, setSpeed] = useState(1);
  const newest = useNewest();
  const choose = (file: File | undefined): void => {
    // a file that is gone by now leaves what was there
    if (file !== undefined) newest.of(file.text()).then(setLog, () => {});
  };
  const isTooLong = log.length > mostLogCharacters;
  const told = useMemo(
    () => (log.trim() === '' || isTooLong ? null : logWords(log, unit)),
    [log, unit, isTooLong],
  );
  const isReady = told?.ok === true;
  useEffect(
    () => onSetup(isReady ? { kind: 'replay', log, unit, speed } : null),
    [onSetup, isReady, log, unit, speed],
  );
  const said =
    told === null
      ? isTooLong
        ? words.tooLong
        : words.empty
      : told.ok
        ? told.words
        : `${told.what}. ${told.mend}`;
  return (
    <>
      <div className="setup-field wide">
        <label htmlFor={field}>{words.log}</label>
        <textarea
          id={field}
          rows={6}
          spellCheck={false}
          aria-describedby={`${field}-hint`}
          value={log}
          onChange={({ target }) => setLog(target.value)}
        />
        <small id={`${field}-hint`} className="quiet">
          {words.hint}
        </small>
      </div>
      <label className="setup-field">
        <span>{words.file}</span>
        <input type="file" onChange={({ target }) => choose(target.files?.[0])} />
      </label>
      <p role="status">{said}</p>
      <Choice
        label={words.unit}
        value={unit}
        values={meterUnits}
        words={(one) => (one === 'counts' ? instrumentTexts.serial.counts : one)}
        onChange={setUnit}
      />
      <Choice
        label={words.speed}
        value={speed}
        values={speeds}
        words={(one) => words.speeds[one] ?? String(one)}
        onChange={setSpeed}
      />
    </>
  );
}
