import { stepText } from '@coreward/bench';
import { type JSX, type KeyboardEvent, useState } from 'react';
import { useSettledBlur } from './use-settled-blur.ts';

export interface EntryInputProps {
  readonly id?: string;
  readonly label?: string;
  readonly describedBy?: string;
  readonly written: string;
  readonly placeholder?: string;
  readonly invalid?: boolean;
  readonly required?: boolean;
  readonly className?: string;
  /** Whether arrow keys move the last digit. */
  readonly steps?: boolean;
  /** A finished entry: behind Enter, an arrow key or on leaving. Not called for what is the same as before. */
  readonly onEnter: (text: string) => void;
}

/** One line of text that is entered when it is finished; Escape gives back what was there. */
export function EntryInput(props: EntryInputProps): JSX.Element {
  const { written, onEnter } = props;
  const [draft, setDraft] = useState<string | null>(null);
  const finish = (text: string | null): void => {
    setDraft(null);
    if (text !== null && text.trim() !== written) onEnter(text.trim());
  };
  const settled = useSettledBlur(
    () => {},
    () => finish(draft),
  );
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === 'Enter') {
      event.preventDefault();
      finish(draft);
    } else if (event.key === 'Escape' && draft !== null) {
      event.stopPropagation();
      setDraft(null);
    } else if (props.steps === true && (event.key === 'ArrowUp' || event.key === 'ArrowDown')) {
      const steps = (event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1);
      const moved = stepText(draft ?? written, steps);
      if (moved === null) return;
      event.preventDefault();
      finish(moved);
    }
  };
  return (
    <input
      id={props.id}
      className={props.className}
      type="text"
      inputMode="text"
      autoComplete="off"
      autoCapitalize="off"
      spellCheck={false}
      aria-label={props.label}
      aria-describedby={props.describedBy}
      aria-invalid={props.invalid === true ? true : undefined}
      aria-required={props.required === true ? true : undefined}
      placeholder={props.placeholder}
      value={draft ?? written}
      onChange={(event) => setDraft(event.target.value)}
      onKeyDown={onKeyDown}
      {...settled}
    />
  );
}
