import { gaugesForPart, newPart, type PartKind, partFields, placeOfPath, readPart } from '@coreward/bench';
import { type JSX, useMemo } from 'react';
import { GroupFields } from '../field/fields.tsx';
import { type Draft, useDraft } from '../field/use-draft.ts';
import { pathOf } from '../frame/address.ts';
import { PageLink } from '../frame/navigation.tsx';
import { useKeeping } from '../keeping/use-keeping.ts';
import { drawerTexts } from '../texts/drawer.ts';
import { fieldTexts } from '../texts/field.ts';
import { emptyAt, neededText } from './needed-fields.ts';
import { partCheck, type ShownPart } from './parts.ts';

const here = pathOf({ page: 'drawer' });

/** A part of the drawer, unfolded into its fields. */
export function PartTag({
  part,
  parts,
}: {
  readonly part: ShownPart;
  readonly parts: readonly ShownPart[];
}): JSX.Element {
  const keeping = useKeeping();
  const { id, kind, name, text, putAway, invented } = part;
  const check = useMemo(() => partCheck(kind, parts, id), [kind, parts, id]);
  const thing = { kind: 'part', id, part: kind } as const;
  const keep = (next: string, what: string): void =>
    keeping.change(thing, { text: next, putAway, invented }, drawerTexts.what(name, what), here);
  const draft = useDraft(text, check, keep, keeping.world.session, `part ${id}`);
  return (
    <div className="part-fields">
      <PartFields kind={kind} draft={draft} />
      {draft.refused.length > 0 && (
        <p className="refusal">
          {fieldTexts.notKept}{' '}
          <button type="button" className="quiet-button" onClick={draft.takeBack}>
            {fieldTexts.takeBack}
          </button>
        </p>
      )}
      <p className="facts">
        <span>{drawerTexts.measuredBy}</span>
        {gaugesForPart(kind).map((gauge) => (
          <PageLink key={gauge.name} to={{ page: 'gauge', gauge: gauge.name, about: { kind: 'part', id } }}>
            {gauge.title}
          </PageLink>
        ))}
      </p>
      <p className="facts">
        <PageLink to={{ page: 'part-versions', id }}>{drawerTexts.versions}</PageLink>
        <button
          type="button"
          className="quiet-button"
          onClick={() =>
            keeping.change(thing, { text, putAway: true, invented }, drawerTexts.whatAway(name), here)
          }
        >
          {drawerTexts.putAway(kind)}
        </button>
      </p>
    </div>
  );
}

/** A part that is not in the drawer yet: it is kept as soon as it says enough to be read. */
export function NewPartTag({
  kind,
  parts,
  onKept,
  onGiveUp,
}: {
  readonly kind: PartKind;
  readonly parts: readonly ShownPart[];
  readonly onKept: (id: string) => void;
  readonly onGiveUp: () => void;
}): JSX.Element {
  const keeping = useKeeping();
  const text = useMemo(() => newPart(kind, { name: drawerTexts.newName(kind) }).text, [kind]);
  const check = useMemo(() => partCheck(kind, parts, null), [kind, parts]);
  const keep = (next: string): void => {
    const { name } = readPart({ kind, text: next });
    onKept(
      keeping.newPart(kind, { text: next, putAway: false, invented: false }, drawerTexts.whatNew(name), here),
    );
  };
  const draft = useDraft(text, check, keep, keeping.world.session, `new ${kind}`);
  const missing = check(draft.text).map(({ place }) => place);
  const fields = partFields({ kind, text: draft.text });
  const needed = emptyAt(fields, missing);
  const askedFor = new Set(needed.map(({ path }) => placeOfPath(path)));
  const filled = { ...draft, refused: draft.refused.filter(({ place }) => !askedFor.has(place)) };
  return (
    <section className="part-fields new-part">
      <h3>{drawerTexts.adding(kind)}</h3>
      <PartFields kind={kind} draft={filled} />
      {needed.length > 0 && <p className="quiet">{drawerTexts.needed(needed.map(neededText).join(', '))}</p>}
      <button
        type="button"
        className="quiet-button"
        onClick={() => {
          draft.takeBack();
          onGiveUp();
        }}
      >
        {drawerTexts.giveUp}
      </button>
    </section>
  );
}

function PartFields({ kind, draft }: { readonly kind: PartKind; readonly draft: Draft }): JSX.Element | null {
  const node = partFields({ kind, text: draft.text });
  return node.kind === 'group' ? (
    <GroupFields node={node} refused={draft.refused} onWrite={draft.write} />
  ) : null;
}
