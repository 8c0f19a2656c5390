import {
  type FieldNode,
  type GroupField,
  type ListField,
  placeOfPath,
  type WrittenTree,
} from '@coreward/bench';
import { type JSX, useId } from 'react';
import { fieldTexts } from '../texts/field.ts';
import { Field, type FieldProps, refusedAt } from './field.tsx';
import { Refusals } from './mend.tsx';

/** Everything that may be filled in at a place of a document and below it. */
export function Fields({ node, refused, onWrite }: FieldProps<FieldNode>): JSX.Element {
  switch (node.kind) {
    case 'group':
      return <Group node={node} refused={refused} onWrite={onWrite} />;
    case 'list':
      return <List node={node} refused={refused} onWrite={onWrite} />;
    default:
      return <Field node={node} refused={refused} onWrite={onWrite} />;
  }
}

/** The fields of a group without a frame around them: what is written or needed first, the rest behind one word. */
export function GroupFields({ node, refused, onWrite }: FieldProps<GroupField>): JSX.Element {
  const id = useId();
  const name = node.fields.find(({ kind }) => kind === 'name');
  const open = node.fields.filter((field) => field !== name && belongs(node, field.key));
  const first = open.filter(
    (field) => isFilled(field) || isNeeded(node, field) || refusedAt(refused, field.path).length > 0,
  );
  const more = open.filter((field) => !first.includes(field));
  const own = refused.filter(({ place }) => place === placeOfPath(node.path));
  return (
    <>
      {name !== undefined && <Fields node={name} refused={refused} onWrite={onWrite} />}
      <Variant node={node} onWrite={onWrite} />
      {first.map((field) =>
        field.kind === 'group' ? (
          <Group key={field.key} node={field} refused={refused} onWrite={onWrite} only={isOneOfOne(node)} />
        ) : (
          <Fields key={field.key} node={field} refused={refused} onWrite={onWrite} />
        ),
      )}
      {more.length > 0 && (
        <details className="more">
          <summary>{fieldTexts.more(more.map(({ key }) => key))}</summary>
          {more.map((field) => (
            <Fields key={field.key} node={field} refused={refused} onWrite={onWrite} />
          ))}
        </details>
      )}
      <Refusals id={`${id}-group`} refused={own} />
    </>
  );
}

/** `only`: it is all that its element is, and is taken out with it. */
function Group({
  node,
  refused,
  onWrite,
  only = false,
}: FieldProps<GroupField> & { readonly only?: boolean }): JSX.Element {
  const { key, path, written, words, begin, leftOut } = node;
  const word = typeof written === 'object' ? written.word : null;
  return (
    <fieldset className="group" data-place={placeOfPath(path)}>
      <legend>
        {key} <span className="group-about">{node.about.replaceAll('`', '')}</span>
      </legend>
      {words.length > 0 && (
        <select
          aria-label={key}
          value={word ?? (written === 'keys' ? '…' : '')}
          onChange={({ target }) =>
            target.value === '…'
              ? onWrite(path, begin, fieldTexts.what(key, word, fieldTexts.group))
              : onWrite(
                  path,
                  target.value === '' ? null : target.value,
                  fieldTexts.what(key, word, target.value === '' ? null : target.value),
                )
          }
        >
          {leftOut.kind !== 'required' && (
            <option value="">
              {leftOut.kind === 'default' ? fieldTexts.asDefault(leftOut.value) : fieldTexts.nothingSaid}
            </option>
          )}
          {words.map((each) => (
            <option key={each} value={each}>
              {each}
            </option>
          ))}
          <option value="…">{fieldTexts.group}</option>
        </select>
      )}
      {written === 'nothing' && words.length === 0 && leftOut.kind === 'optional' ? (
        <p className="field-about">
          {leftOut.meaning.replaceAll('`', '')}{' '}
          <button
            type="button"
            className="quiet-button"
            onClick={() => onWrite(path, begin, fieldTexts.whatAdded(key))}
          >
            {fieldTexts.add(key)}
          </button>
        </p>
      ) : words.length > 0 && written !== 'keys' ? null : (
        <>
          <GroupFields node={node} refused={refused} onWrite={onWrite} />
          {written === 'keys' && leftOut.kind === 'optional' && !only && (
            <button
              type="button"
              className="quiet-button"
              onClick={() => onWrite(path, null, fieldTexts.whatTakenOut(key))}
            >
              {fieldTexts.takeOut(key)}
            </button>
          )}
        </>
      )}
    </fieldset>
  );
}

/** The choice between descriptions that exclude each other; what both can hold is carried over. */
function Variant({ node, onWrite }: Pick<FieldProps<GroupField>, 'node' | 'onWrite'>): JSX.Element | null {
  const { variants, variant, key, path, fields } = node;
  const id = useId();
  if (variants === null || variants.length < 2 || isOneOfOne(node)) return null;
  const named = ({ needs }: (typeof variants)[number]): string => needs.join(', ');
  const choose = (index: number): void => {
    const next = variants[index];
    if (next === undefined) return;
    const stays = fields.filter(
      (field) => isFilled(field) && belongs({ ...node, variant: index }, field.key),
    );
    const kept = Object.fromEntries(stays.map((field) => [field.key, asWritten(field)]));
    const filled = fields.find((field) => variants[variant]?.needs.includes(field.key));
    const carried =
      filled?.kind === 'quantity' && next.needs.length === 1
        ? { [next.needs[0] ?? '']: asWritten(filled) }
        : {};
    onWrite(path, { ...carried, ...kept }, fieldTexts.whatVariant(key, named(next)));
  };
  return (
    <div className="field variant">
      <label htmlFor={id}>{fieldTexts.toldBy}</label>
      <select id={id} value={variant} onChange={({ target }) => choose(Number(target.value))}>
        {variants.map((each, index) => (
          <option key={named(each)} value={index}>
            {named(each)}
          </option>
        ))}
      </select>
    </div>
  );
}

function List({ node, refused, onWrite }: FieldProps<ListField>): JSX.Element {
  const { key, path, items, newItems } = node;
  return (
    <fieldset className="group" data-place={placeOfPath(path)}>
      <legend>
        {key} <span className="group-about">{node.about.replaceAll('`', '')}</span>
      </legend>
      <ol className="items">
        {items.map((item) => (
          <li key={item.key}>
            {item.kind === 'group' ? (
              <GroupFields node={item} refused={refused} onWrite={onWrite} />
            ) : (
              <Fields node={item} refused={refused} onWrite={onWrite} />
            )}
            <button
              type="button"
              className="quiet-button"
              aria-label={fieldTexts.takeOut(fieldTexts.item(key, item.key))}
              onClick={() =>
                onWrite(item.path, null, fieldTexts.whatTakenOut(fieldTexts.item(key, item.key)))
              }
            >
              {fieldTexts.takeOutThis}
            </button>
          </li>
        ))}
      </ol>
      <div className="adds">
        {newItems.map(({ name, written }) => (
          <button
            key={name}
            type="button"
            className="quiet-button"
            onClick={() =>
              onWrite([...path, items.length], written, fieldTexts.whatAdded(name === '' ? key : name))
            }
          >
            {name === '' ? fieldTexts.addOne(key) : fieldTexts.add(name)}
          </button>
        ))}
      </div>
    </fieldset>
  );
}

/** Whether a key goes with the description that is chosen. */
function belongs({ variants, variant }: GroupField, key: string): boolean {
  if (variants === null) return true;
  const constrained = variants.some(({ needs, allows }) => needs.includes(key) || allows.includes(key));
  const chosen = variants[variant];
  return !constrained || chosen === undefined || chosen.needs.includes(key) || chosen.allows.includes(key);
}

/** An element that is one thing or another: which one is chosen when it is added. */
const isOneOfOne = ({ variants }: GroupField): boolean =>
  variants?.every(({ needs, allows }) => needs.length === 1 && allows.length === 0) ?? false;

function isNeeded({ variants, variant }: GroupField, field: FieldNode): boolean {
  return field.leftOut.kind === 'required' || (variants?.[variant]?.needs.includes(field.key) ?? false);
}

function isFilled(field: FieldNode): boolean {
  if (field.kind === 'list') return field.items.length > 0;
  if (field.kind === 'group') return field.written !== 'nothing';
  return field.written !== null;
}

/** What stands in a field, to be carried elsewhere. */
function asWritten(field: FieldNode): WrittenTree {
  switch (field.kind) {
    case 'quantity': {
      const { text = '', origin = null, note = null, at = null } = field.written ?? {};
      return origin === null && note === null && at === null ? text : { value: text, at, origin, note };
    }
    case 'group':
      return typeof field.written === 'object'
        ? field.written.word
        : Object.fromEntries(field.fields.filter(isFilled).map((inner) => [inner.key, asWritten(inner)]));
    case 'list':
      return field.items.map(asWritten);
    default:
      return field.written ?? '';
  }
}
