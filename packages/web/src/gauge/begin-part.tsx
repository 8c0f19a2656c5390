import {
  begunPart,
  type FieldPath,
  type KeptPart,
  type PartToBegin,
  partFields,
  placeOfPath,
  setInText,
  type WrittenTree,
} from '@coreward/bench';
import { type JSX, useMemo, useState } from 'react';
import { emptyAt, neededText } from '../drawer/needed-fields.ts';
import { partCheck, partsOf } from '../drawer/parts.ts';
import { GroupFields } from '../field/fields.tsx';
import { useKept } from '../keeping/use-keeping.ts';
import { drawerTexts } from '../texts/drawer.ts';
import { gaugeTexts } from '../texts/gauge.ts';
import '../drawer/drawer.css';

interface Edit {
  readonly path: FieldPath;
  readonly value: WrittenTree | null;
}

interface BeginPartProps {
  readonly gauge: string;
  readonly begin: PartToBegin;
  readonly busy: boolean;
  readonly onBegin: (part: KeptPart) => void;
}

/** A part that is not in the drawer yet, with what was measured in its place; the rest is asked for. */
export function BeginPart({ gauge, begin, busy, onBegin }: BeginPartProps): JSX.Element {
  const { kind } = begin;
  const state = useKept();
  const [edits, setEdits] = useState<readonly Edit[]>([]);
  const begun = useMemo(() => begunPart(gauge, begin, drawerTexts.newName(kind)), [gauge, begin, kind]);
  const text = useMemo(
    () => edits.reduce((before, { path, value }) => setInText(before, path, value), begun.text),
    [edits, begun],
  );
  const refused = useMemo(() => partCheck(kind, partsOf(state), null)(text), [kind, state, text]);
  const node = partFields({ kind, text });
  const needed = emptyAt(
    node,
    refused.map(({ place }) => place),
  );
  const askedFor = new Set(needed.map(({ path }) => placeOfPath(path)));
  return (
    <section className="part-fields new-part">
      <h3>{drawerTexts.adding(kind)}</h3>
      {node.kind === 'group' && (
        <GroupFields
          node={node}
          refused={refused.filter(({ place }) => !askedFor.has(place))}
          onWrite={(path, value) => setEdits([...edits, { path, value }])}
        />
      )}
      {needed.length > 0 && <p className="quiet">{drawerTexts.needed(needed.map(neededText).join(', '))}</p>}
      <p>
        <button
          type="button"
          className="act"
          disabled={busy || refused.length > 0}
          onClick={() => onBegin({ kind, text })}
        >
          {gaugeTexts.putIntoDrawer}
        </button>
      </p>
    </section>
  );
}
