import { type SettingSpec, settingExample, wordOf } from '@coreward/bench';
import { type JSX, useId } from 'react';
import { gaugeTexts } from '../texts/gauge.ts';

/** The longest example that a field shows whole on a phone, characters. */
const longest = 28;

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
  const example = gaugeTexts.like(settingExample(spec));
  // one that is longer than the field stands under it, where it can still be read while it is typed
  const isLong = example.length > longest;
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
            placeholder={isLong ? undefined : example}
            value={written}
            onChange={({ target }) => onWrite(target.value)}
          />
        )}
      </div>
      <p className="field-about" id={about}>
        {spec.needed ? `${gaugeTexts.isNeeded}: ` : ''}
        {spec.what.replaceAll('`', '')}
        {isLong && `; ${example}`}
      </p>
    </div>
  );
}
