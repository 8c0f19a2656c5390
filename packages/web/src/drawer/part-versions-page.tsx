import { type JSX, useMemo } from 'react';
import { VersionList } from '../book/version-list.tsx';
import { pathOf } from '../frame/address.ts';
import { PageLink } from '../frame/navigation.tsx';
import { PageHeading } from '../frame/page-heading.tsx';
import { useKept } from '../keeping/use-keeping.ts';
import { versionTexts } from '../texts/versions.ts';
import { partCheck, partsOf, type ShownPart } from './parts.ts';

/** The versions of a part of the drawer. */
export function PartVersionsPage({ id }: { readonly id: string }): JSX.Element {
  const state = useKept();
  const parts = useMemo(() => partsOf(state), [state]);
  const part = parts.find((one) => one.id === id);
  if (part === undefined && !state.loaded) return <p className="quiet">{versionTexts.waiting}</p>;
  return (
    <>
      <PageHeading title={part === undefined ? versionTexts.unknownPart : versionTexts.title(part.name)} />
      {part === undefined && <p>{versionTexts.unknownPartText}</p>}
      <p className="facts">
        <PageLink to={part === undefined ? { page: 'drawer' } : { page: 'drawer', part: id }}>
          {versionTexts.toDrawer}
        </PageLink>
      </p>
      {part !== undefined && <Versions part={part} parts={parts} />}
    </>
  );
}

function Versions({
  part: { id, kind },
  parts,
}: {
  readonly part: ShownPart;
  readonly parts: readonly ShownPart[];
}): JSX.Element {
  const check = useMemo(() => partCheck(kind, parts, id), [kind, parts, id]);
  return (
    <VersionList
      thing={{ kind: 'part', id, part: kind }}
      where={pathOf({ page: 'drawer' })}
      // another part may have taken its name meanwhile
      hindered={({ text }) => check(text)[0]?.what ?? null}
    />
  );
}
