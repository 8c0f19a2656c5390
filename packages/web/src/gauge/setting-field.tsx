import { type SettingSpec, settingExample, wordOf } from '@coreward/bench';
import { type JSX, useId } from 'react';
import { gaugeTexts } from '../texts/gauge.ts';

/** One thing about the whole set of readings, as it is written. */
export function SettingField({
  spec,
  inTable,
  written,
  isRefused,
  onWrite,
}: {
  readonly spec: SettingSpec;
  /** A table may say it as well, in its text. */
  readonly inTable: boolean;
  readonly written: string;
  readonly isRefused: boolean;
  readonly onWrite: (text: string) => void;
}): JSX.Element {
  const id = useId();
  const about = `${id}-about`;
  return (
    <div className="field">
      <label htmlFor={id}>{spec.name}</label>
      <div className="field-entry">
        {spec.dimension === 'word' ? (
          <select
            id={id}
            aria-describedby={about}
            value={wordOf(spec, written) ?? written}
            onChange={({ target }) => onWrite(target.value)}
          >
            <option value="">{inTable ? gaugeTexts.asWritten : gaugeTexts.leftOut}</option>
            {[...new Set(Object.values(spec.words))].map((word) => (
              <option key={word} value={word}>
                {word}
              </option>
            ))}
          </select>
        ) : (
          <input
            id={id}
            className="entry"
            type="text"
            autoComplete="off"
            spellCheck={false}
            aria-describedby={about}
            aria-required={spec.needed ? true : undefined}
            aria-invalid={isRefused ? true : undefined}
            placeholder={gaugeTexts.like(settingExample(spec))}
            value={written}
            onChange={({ target }) => onWrite(target.value)}
          />
        )}
      </div>
      <p className="field-about" id={about}>
        {spec.needed ? `${gaugeTexts.isNeeded}: ` : ''}
        {spec.what.replaceAll('`', '')}
      </p>
    </div>
  );
}
