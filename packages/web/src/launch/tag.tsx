import {
  type Edited,
  editLaunch,
  type FieldNode,
  type Launch,
  type LinePart,
  type Moved,
  type TagField,
  tagFields,
  type WrittenTree,
} from '@coreward/bench';
import { type JSX, useEffect, useRef } from 'react';
import { launchTexts } from '../texts/launch.ts';
import { FieldRow } from './field-row.tsx';

interface TagProps {
  readonly part: LinePart;
  readonly text: string;
  readonly fields: FieldNode;
  readonly launch: Launch | null;
  readonly onChange: (text: string, what: string) => void;
  readonly onHold: (tag: TagField, moved: Moved | null) => void;
  readonly onClose: () => void;
}

/** What unfolds at a part of the line: its quantities, each with its doubt and its origin. */
export function Tag({ part, text, fields, launch, onChange, onHold, onClose }: TagProps): JSX.Element {
  const heading = useRef<HTMLHeadingElement>(null);
  const { written, unwritten, lists } = tagFields(fields, part.places, launch);
  useEffect(() => {
    heading.current?.focus();
  }, []);

  function edit(tag: TagField, value: WrittenTree | null, after: string): Edited {
    const edited = editLaunch(text, tag.field.path, value);
    if (edited.ok) onChange(edited.text, launchTexts.changed(tag.field.key, beforeOf(tag), after));
    return edited;
  }

  const rows = (of: readonly TagField[]) =>
    groupsOf(of).map(({ group, tags }) => (
      <fieldset key={group}>
        {group !== '' && <legend>{group}</legend>}
        {tags.map((tag) => (
          <FieldRow key={tag.key} tag={tag} onEdit={edit} onHold={onHold} />
        ))}
      </fieldset>
    ));

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
        <button type="button" className="plain" onClick={onClose}>
          {launchTexts.close}
        </button>
      </header>
      <div className="tag-fields">{rows(written)}</div>
      {(unwritten.length > 0 || lists.length > 0) && (
        <details open={written.length === 0}>
          <summary>{launchTexts.unwritten(unwritten.length)}</summary>
          <div className="tag-fields">{rows(unwritten)}</div>
        </details>
      )}
    </section>
  );
}

const beforeOf = ({ field }: TagField): string =>
  (field.kind === 'quantity' ? field.written?.text : field.written) ?? '';

function groupsOf(tags: readonly TagField[]) {
  const groups: { readonly group: string; readonly tags: TagField[] }[] = [];
  for (const tag of tags) {
    const group = groups.find((each) => each.group === tag.group);
    if (group === undefined) groups.push({ group: tag.group, tags: [tag] });
    else group.tags.push(tag);
  }
  return groups;
}
