import {
  type Edited,
  type Moved,
  mendedText,
  origins,
  type RefusedPlace,
  type TagField,
  type WrittenTree,
  writtenQuantity,
} from '@coreward/bench';
import { type JSX, type KeyboardEvent, useId, useState } from 'react';
import { launchTexts } from '../texts/launch.ts';
import { Wheel } from './wheel.tsx';

export interface RowProps {
  readonly tag: TagField;
  /** Tries a change; an `ok` one is kept by then. */
  readonly onEdit: (tag: TagField, value: WrittenTree | null, after: string) => Edited;
  /** What a hand holds; null: it has let go. */
  readonly onHold: (tag: TagField, moved: Moved | null) => void;
}

/** One key of the document with its text; a refused text stays as typed, with the mend beside it. */
export function FieldRow({ tag, onEdit, onHold }: RowProps): JSX.Element {
  const { field, stands } = tag;
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const [held, setHeld] = useState<string | null>(null);
  const [refused, setRefused] = useState<readonly RefusedPlace[]>([]);
  const written = field.kind === 'quantity' ? (field.written?.text ?? null) : field.written;
  const shown = held ?? draft ?? written ?? '';

  function tell(text: string): WrittenTree | null {
    const bare = text.trim();
    if (bare === '') return null;
    if (field.kind !== 'quantity') return bare;
    return writtenQuantity({ origin: null, note: null, at: null, ...field.written, text: bare });
  }

  function take(text: string): void {
    setHeld(null);
    if (text.trim() === (written ?? '')) {
      setDraft(null);
      setRefused([]);
      onHold(tag, null);
      return;
    }
    const edited = onEdit(tag, tell(text), text.trim());
    onHold(tag, null);
    setDraft(edited.ok ? null : text);
    setRefused(edited.ok ? [] : edited.refused);
  }

  function onKeyDown(event: KeyboardEvent<HTMLInputElement>): void {
    if (event.key === 'Enter') take(shown);
    if (event.key === 'Escape' && draft !== null) {
      event.stopPropagation();
      setDraft(null);
      setRefused([]);
    }
  }

  const describedBy = `${id}-about${refused.length > 0 ? ` ${id}-refused` : ''}`;
  return (
    <div className={refused.length > 0 ? 'field refused' : 'field'}>
      <label htmlFor={id}>{field.key}</label>
      <div className="field-value">
        {field.kind === 'word' ? (
          <select
            id={id}
            value={written ?? ''}
            aria-describedby={describedBy}
            onChange={(event) => take(event.target.value)}
          >
            {written === null && <option value="">{launchTexts.notWritten}</option>}
            {field.words.map((word) => (
              <option key={word}>{word}</option>
            ))}
          </select>
        ) : (
          <input
            id={id}
            value={shown}
            placeholder={field.kind === 'quantity' ? (stands ?? field.example) : field.example}
            autoComplete="off"
            autoCapitalize="off"
            spellCheck={false}
            aria-invalid={refused.length > 0}
            aria-describedby={describedBy}
            onChange={(event) => setDraft(event.target.value)}
            onBlur={() => draft !== null && take(draft)}
            onKeyDown={onKeyDown}
          />
        )}
        {field.kind === 'quantity' && field.written !== null && (
          <select
            className="origin"
            aria-label={launchTexts.originOf(field.key)}
            value={field.written.origin ?? 'assumed'}
            onChange={(event) => {
              const origin = origins.find((known) => known === event.target.value) ?? null;
              const { written: before } = field;
              if (before !== null) onEdit(tag, writtenQuantity({ ...before, origin }), origin ?? '');
            }}
          >
            {origins.map((origin) => (
              <option key={origin}>{origin}</option>
            ))}
          </select>
        )}
      </div>
      {field.kind === 'quantity' && field.dimension === 'length' && written !== null && draft === null && (
        <Wheel
          label={field.key}
          text={written}
          dimension={field.dimension}
          onHold={(moved) => {
            setHeld(moved?.text ?? null);
            onHold(tag, moved);
          }}
          onDone={take}
        />
      )}
      <p className="field-about" id={`${id}-about`}>
        {field.about}
        {field.kind === 'quantity' && field.written?.note != null && ` · ${field.written.note}`}
        {field.kind === 'quantity' && stands !== null && ` · ${launchTexts.computedWith(stands)}`}
      </p>
      {refused.length > 0 && (
        <div className="mend" id={`${id}-refused`} role="alert">
          {refused.map((each) => {
            const mend = mendedText(each);
            return (
              <p key={each.place + each.what}>
                {each.what}. {each.mend}
                {mend !== null && field.kind !== 'word' && (
                  <button
                    type="button"
                    onMouseDown={(event) => event.preventDefault()}
                    onClick={() => take(mend)}
                  >
                    {launchTexts.mendButton(mend)}
                  </button>
                )}
              </p>
            );
          })}
        </div>
      )}
    </div>
  );
}
