import {
  type Absence,
  type FieldPath,
  placeOfPath,
  type QuantityField,
  type RefusedPlace,
  type TextField,
  type WordField,
  type WrittenQuantity,
  type WrittenTree,
  writtenQuantity,
} from '@coreward/bench';
import { type JSX, type ReactNode, useId, useState } from 'react';
import { fieldTexts } from '../texts/field.ts';
import { EntryInput } from './entry-input.tsx';
import { Refusals } from './mend.tsx';
import { useSettledBlur } from './use-settled-blur.ts';
import './field.css';

/** A finished entry: what is written at which place (null: nothing), and what was done, in words. */
export type OnWrite = (path: FieldPath, value: WrittenTree | null, what: string) => void;

export interface FieldProps<Node> {
  readonly node: Node;
  /** All that is refused in the document; a field shows what concerns its place. */
  readonly refused: readonly RefusedPlace[];
  readonly onWrite: OnWrite;
}

/** What is refused at a place or below it. */
export function refusedAt(refused: readonly RefusedPlace[], path: FieldPath): readonly RefusedPlace[] {
  const here = placeOfPath(path);
  return refused.filter(({ place }) => place === here || place.startsWith(`${here}.`));
}

/** One place of a document in which a quantity, a word or a name is entered. */
export function Field({
  node,
  refused,
  onWrite,
}: FieldProps<QuantityField | WordField | TextField>): JSX.Element {
  const here = refusedAt(refused, node.path);
  switch (node.kind) {
    case 'quantity':
      return <Quantity node={node} refused={here} onWrite={onWrite} />;
    case 'word':
      return <Word node={node} refused={here} onWrite={onWrite} />;
    case 'name':
    case 'count':
      return <Text node={node} refused={here} onWrite={onWrite} />;
  }
}

function Quantity({ node, refused, onWrite }: FieldProps<QuantityField>): JSX.Element {
  const { key, path, written, at, words } = node;
  const [noteOpen, setNoteOpen] = useState(false);
  const now: WrittenQuantity = written ?? { text: '', origin: null, note: null, at: null };
  const write = (next: WrittenQuantity, what: string): void => onWrite(path, writtenQuantity(next), what);
  const enter = (text: string): void => {
    const what = fieldTexts.what(key, written?.text ?? null, text === '' ? null : text);
    if (text === '') onWrite(path, null, what);
    else if (words.includes(text)) onWrite(path, text, what);
    else write({ ...now, text }, what);
  };
  return (
    <Frame node={node} refused={refused} hints={[fieldTexts.bare(node.bare), fieldTexts.step]} onTake={enter}>
      {(ids) => (
        <>
          <EntryInput
            {...ids}
            className="entry"
            written={now.text}
            placeholder={placeholder(node.leftOut, node.example)}
            required={node.leftOut.kind === 'required'}
            invalid={refused.length > 0}
            steps
            onEnter={enter}
          />
          {words.map((word) => (
            <button
              key={word}
              type="button"
              className="quiet-button"
              aria-pressed={now.text === word}
              onClick={() => enter(word)}
            >
              {fieldTexts.orWord(word)}
            </button>
          ))}
          {written !== null && !words.includes(written.text) && (
            <span className="told">
              {at !== null && (
                <span className="told-at">
                  <span aria-hidden="true">{fieldTexts.at}</span>
                  <EntryInput
                    label={fieldTexts.atLabel(key, at.about)}
                    className="entry entry-small"
                    written={now.at ?? ''}
                    placeholder={at.example}
                    steps
                    onEnter={(text) =>
                      write(
                        { ...now, at: text === '' ? null : text },
                        fieldTexts.what(`${key} ${fieldTexts.at}`, now.at, text === '' ? null : text),
                      )
                    }
                  />
                </span>
              )}
              <select
                aria-label={fieldTexts.origin(key)}
                value={now.origin ?? ''}
                onChange={({ target }) => {
                  const origin = originOf(target.value);
                  write({ ...now, origin }, fieldTexts.whatOrigin(key, origin ?? fieldTexts.originNotSaid));
                }}
              >
                <option value="">{fieldTexts.originNotSaid}</option>
                <option value="measured">measured</option>
                <option value="datasheet">datasheet</option>
                <option value="assumed">assumed</option>
              </select>
              {now.note === null && !noteOpen ? (
                <button
                  type="button"
                  className="quiet-button"
                  aria-label={fieldTexts.note(key)}
                  onClick={() => setNoteOpen(true)}
                >
                  {fieldTexts.addNote}
                </button>
              ) : (
                <EntryInput
                  label={fieldTexts.note(key)}
                  className="entry entry-note"
                  written={now.note ?? ''}
                  placeholder={fieldTexts.addNote}
                  onEnter={(text) =>
                    write({ ...now, note: text === '' ? null : text }, fieldTexts.whatNote(key))
                  }
                />
              )}
            </span>
          )}
        </>
      )}
    </Frame>
  );
}

const originOf = (value: string): WrittenQuantity['origin'] =>
  value === 'measured' || value === 'datasheet' || value === 'assumed' ? value : null;

function Word({ node, refused, onWrite }: FieldProps<WordField>): JSX.Element {
  const { key, path, written, words, leftOut } = node;
  const known = written === null || words.includes(written);
  const enter = (word: string): void =>
    onWrite(path, word === '' ? null : word, fieldTexts.what(key, written, word === '' ? null : word));
  return (
    <Frame node={node} refused={refused} hints={[]} onTake={enter}>
      {({ id, describedBy }) => (
        <select
          id={id}
          aria-describedby={describedBy}
          aria-invalid={refused.length > 0 ? true : undefined}
          value={written ?? ''}
          onChange={({ target }) => enter(target.value)}
        >
          {!(leftOut.kind === 'required' && written !== null) && (
            <option value="">
              {leftOut.kind === 'required'
                ? fieldTexts.choose
                : leftOut.kind === 'default'
                  ? fieldTexts.asDefault(leftOut.value)
                  : fieldTexts.nothingSaid}
            </option>
          )}
          {!known && <option value={written}>{written}</option>}
          {words.map((word) => (
            <option key={word} value={word}>
              {word}
            </option>
          ))}
        </select>
      )}
    </Frame>
  );
}

function Text({ node, refused, onWrite }: FieldProps<TextField>): JSX.Element {
  const { key, path, written, kind, leftOut } = node;
  const enter = (text: string): void =>
    onWrite(path, text === '' ? null : text, fieldTexts.what(key, written, text === '' ? null : text));
  return (
    <Frame node={node} refused={refused} hints={[]} onTake={enter}>
      {(ids) => (
        <EntryInput
          {...ids}
          className={kind === 'name' ? 'entry entry-name' : 'entry'}
          written={written ?? ''}
          placeholder={kind === 'count' ? placeholder(leftOut, '') : ''}
          required={leftOut.kind === 'required'}
          invalid={refused.length > 0}
          steps={kind === 'count'}
          onEnter={enter}
        />
      )}
    </Frame>
  );
}

interface FrameProps {
  readonly node: QuantityField | WordField | TextField;
  readonly refused: readonly RefusedPlace[];
  /** Shown while the field is in use. */
  readonly hints: readonly string[];
  readonly onTake: (text: string) => void;
  readonly children: (ids: { readonly id: string; readonly describedBy: string }) => ReactNode;
}

function Frame({ node, refused, hints, onTake, children }: FrameProps): JSX.Element {
  const id = useId();
  const about = `${id}-about`;
  const refusal = `${id}-refusal`;
  const [inUse, setInUse] = useState(false);
  const settled = useSettledBlur(
    () => setInUse(true),
    () => setInUse(false),
  );
  return (
    <div className="field" data-place={placeOfPath(node.path)}>
      <label htmlFor={id}>{node.key}</label>
      <div className="field-entry" {...settled}>
        {children({ id, describedBy: refused.length > 0 ? `${refusal} ${about}` : about })}
      </div>
      <p className="field-about" id={about}>
        {node.about.replaceAll('`', '')}
        {inUse && (
          <span className="field-hint">
            {' '}
            {[leftOutText(node.leftOut), ...hints].map((hint) => `· ${hint.replaceAll('`', '')} `)}
          </span>
        )}
      </p>
      <Refusals id={refusal} refused={refused} onTake={onTake} />
    </div>
  );
}

function leftOutText(leftOut: Absence): string {
  switch (leftOut.kind) {
    case 'required':
      return fieldTexts.leftOut.required;
    case 'default':
      return fieldTexts.leftOut.default(leftOut.value, leftOut.why);
    case 'optional':
      return fieldTexts.leftOut.optional(leftOut.meaning);
  }
}

function placeholder(leftOut: Absence, example: string): string {
  if (leftOut.kind === 'default' && leftOut.value !== '{}' && leftOut.value !== '[]') return leftOut.value;
  return leftOut.kind === 'required' ? example : '';
}
