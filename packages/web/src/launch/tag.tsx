import {
  editLaunch,
  fieldAt,
  type LengthToTurn,
  type LinePart,
  launchFields,
  type Moved,
  placesRefused,
  Refusal,
  type RefusedPlace,
  readLaunch,
  writtenPart,
} from '@coreward/bench';
import { type JSX, memo, useEffect, useMemo, useRef } from 'react';
import { Fields } from '../field/fields.tsx';
import { useDraft } from '../field/use-draft.ts';
import { useKeeping } from '../keeping/use-keeping.ts';
import { fieldTexts } from '../texts/field.ts';
import { launchTexts } from '../texts/launch.ts';
import type { LaunchPageProps } from './launch-page-props.ts';
import { Turning } from './turning.tsx';
import { WayFields } from './way-fields.tsx';

interface TagProps extends Pick<LaunchPageProps, 'text' | 'onChange' | 'parts'> {
  readonly part: LinePart;
  readonly onHold: (length: LengthToTurn, moved: Moved | null) => void;
  readonly onClose: () => void;
}

/** What unfolds at a part of the line: its quantities, each with its doubt and its origin. */
export const Tag = memo(function Tag(props: TagProps): JSX.Element {
  const { part, text, onChange, parts, onHold, onClose } = props;
  const heading = useRef<HTMLHeadingElement>(null);
  const { world } = useKeeping();
  const draft = useDraft(text, refusedIn, onChange, world.session, `launch ${window.location.pathname}`);
  const fields = useMemo(() => launchFields(draft.text), [draft.text]);
  const kept = useMemo(() => launchFields(text), [text]);
  const others = parts.filter(({ kind }) => kind === part.kind);
  useEffect(() => heading.current?.focus(), []);

  function turned(length: LengthToTurn, to: string): void {
    onHold(length, null);
    const node = fieldAt(kept, length.path);
    const before = node?.kind === 'quantity' ? node.written : null;
    const bare = before === null || (before.origin === null && before.note === null && before.at === null);
    const path = bare ? length.path : [...length.path, 'value'];
    const edited = editLaunch(text, path, to);
    const what = fieldTexts.what(length.name, length.text, to);
    if (edited.ok) onChange(edited.text, what);
    else draft.write(path, to, what);
  }

  function swapIn(name: string): void {
    const other = others.find((each) => each.name === name);
    if (other === undefined || other.kind !== part.kind) return;
    const { kind } = part;
    if (kind !== 'laser' && kind !== 'collimator' && kind !== 'fibre') return;
    const what = launchTexts.swapped(part.name, name);
    draft.write([kind], writtenPart({ kind, text: other.text }), what);
  }

  return (
    <section
      className="tag"
      id="tag"
      aria-label={part.name}
      onKeyDown={(event) => event.key === 'Escape' && onClose()}
    >
      <header>
        <h2 ref={heading} tabIndex={-1}>
          {part.name}
        </h2>
        {others.length > 0 && (
          <select aria-label={launchTexts.swap} value="" onChange={({ target }) => swapIn(target.value)}>
            <option value="">{launchTexts.swap}</option>
            {others.map(({ name, text: id }) => (
              <option key={id}>{name}</option>
            ))}
          </select>
        )}
        <button type="button" className="quiet-button" onClick={onClose}>
          {launchTexts.close}
        </button>
      </header>
      <Turning part={part} fields={kept} onHold={onHold} onDone={turned} />
      <div className="tag-fields">
        {part.places.map((place) => {
          const node = fieldAt(fields, place);
          if (node === null) return null;
          const shown = { refused: draft.refused, onWrite: draft.write };
          const key = place.join('.');
          return node.kind === 'list' ? (
            <WayFields key={key} node={node} {...shown} />
          ) : (
            <Fields key={key} node={node} {...shown} />
          );
        })}
      </div>
      {draft.refused.length > 0 && (
        <p className="refusal">
          {fieldTexts.notKept}{' '}
          <button type="button" className="quiet-button" onClick={draft.takeBack}>
            {fieldTexts.takeBack}
          </button>
        </p>
      )}
    </section>
  );
}, showsTheSame);

/** While a hand moves the light, only the light at the part changes, and its tag shows none of it. */
function showsTheSame(before: TagProps, now: TagProps): boolean {
  return (
    before.text === now.text &&
    before.onChange === now.onChange &&
    before.parts === now.parts &&
    before.part.id === now.part.id &&
    before.part.name === now.part.name
  );
}

function refusedIn(text: string): readonly RefusedPlace[] {
  try {
    readLaunch(text, 'launch');
    return [];
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return placesRefused(error);
  }
}
