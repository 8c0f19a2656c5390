import { type ReadingUnit, readingWords, readTypedReading } from '@coreward/bench';
import { type FormEvent, type JSX, useId, useState } from 'react';
import { instrumentTexts } from '../texts/instrument.ts';

/** From which reading on an instrument shows no more, as its owner knows it. */
export function SaturationField({
  unit,
  saturation,
  lastReading,
  onKeep,
}: {
  readonly unit: ReadingUnit;
  readonly saturation: number | null;
  /** Whose unit a bare number takes. */
  readonly lastReading: number | null;
  readonly onKeep: (saturation: number | null) => Promise<boolean>;
}): JSX.Element {
  const field = useId();
  const [written, setWritten] = useState(saturation === null ? '' : readingWords(saturation, unit));
  const [said, setSaid] = useState<string | null>(null);
  const words = instrumentTexts.saturation;
  const keep = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const read = written.trim() === '' ? null : readTypedReading(written, unit, saturation ?? lastReading);
    if (read?.ok === false) setSaid(`${read.what}. ${read.mend}`);
    else if (await onKeep(read === null ? null : read.value)) setSaid(instrumentTexts.kept);
  };
  return (
    <form className="setup-row" onSubmit={(event) => void keep(event)}>
      <div className="setup-field">
        <label htmlFor={field}>{words.label}</label>
        <input
          id={field}
          type="text"
          autoComplete="off"
          aria-describedby={`${field}-said`}
          value={written}
          onChange={({ target }) => {
            setWritten(target.value);
            setSaid(null);
          }}
        />
      </div>
      <button type="submit">{words.keep}</button>
      <small id={`${field}-said`} role="status" className="quiet">
        {said ?? words.hint}
      </small>
    </form>
  );
}
