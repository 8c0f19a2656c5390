import type { OffsetRead } from '@coreward/bench';
import { type JSX, useId, useState } from 'react';
import { EntryInput } from '../field/entry-input.tsx';

/** A length that is entered when it is finished; what is refused is said under it. */
export function LengthField({
  label,
  written,
  read,
  onEnter,
}: {
  readonly label: string;
  readonly written: string;
  readonly read: (text: string) => OffsetRead;
  readonly onEnter: (length: number) => void;
}): JSX.Element {
  const [refused, setRefused] = useState<{ readonly text: string; readonly why: string } | null>(null);
  const id = useId();
  return (
    <div className="steer-field">
      <label htmlFor={id}>{label}</label>
      <EntryInput
        id={id}
        written={refused?.text ?? written}
        invalid={refused !== null}
        describedBy={`${id}-refused`}
        steps
        onEnter={(text) => {
          const length = read(text);
          setRefused(length.ok ? null : { text, why: `${length.what}. ${length.mend}` });
          if (length.ok) onEnter(length.value);
        }}
      />
      <p id={`${id}-refused`} role={refused === null ? undefined : 'alert'}>
        {refused?.why}
      </p>
    </div>
  );
}
