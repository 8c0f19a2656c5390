import { type JSX, type ReactNode, useId } from 'react';

/** One of a few, by a word. */
export function Choice<Value extends string | number>({
  label,
  value,
  values,
  words,
  onChange,
}: {
  readonly label: string;
  readonly value: Value;
  readonly values: readonly Value[];
  readonly words: (value: Value) => string;
  readonly onChange: (value: Value) => void;
}): JSX.Element {
  return (
    <label className="setup-field">
      <span>{label}</span>
      <select
        value={value}
        onChange={({ target }) => {
          const chosen = values.find((one) => String(one) === target.value);
          if (chosen !== undefined) onChange(chosen);
        }}
      >
        {values.map((one) => (
          <option key={one} value={one}>
            {words(one)}
          </option>
        ))}
      </select>
    </label>
  );
}

/** One line of text. */
export function Line({
  label,
  value,
  hint,
  onChange,
  invalid = false,
  children,
}: {
  readonly label: string;
  readonly value: string;
  readonly hint?: string;
  readonly onChange: (text: string) => void;
  readonly invalid?: boolean;
  readonly children?: ReactNode;
}): JSX.Element {
  const id = useId();
  return (
    <div className="setup-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        value={value}
        aria-invalid={invalid || undefined}
        aria-describedby={hint === undefined ? undefined : `${id}-hint`}
        onChange={({ target }) => onChange(target.value)}
      />
      {children}
      {hint !== undefined && (
        <small id={`${id}-hint`} className="quiet">
          {hint}
        </small>
      )}
    </div>
  );
}
