import type { JSX } from 'react';
import { VersionList } from '../book/version-list.tsx';
import { pathOf } from '../frame/address.ts';
import { PageLink } from '../frame/navigation.tsx';
import { PageHeading } from '../frame/page-heading.tsx';
import { useKept } from '../keeping/use-keeping.ts';
import { versionTexts } from '../texts/versions.ts';

/** The versions of a launch. */
export function VersionsPage({ id }: { readonly id: string }): JSX.Element {
  const held = useKept().launches.get(id);
  return (
    <>
      <PageHeading title={versionTexts.title(held?.name ?? '')} />
      <p className="facts">
        <PageLink to={{ page: 'launch', id }}>{versionTexts.toLaunch}</PageLink>
      </p>
      <VersionList thing={{ kind: 'launch', id }} where={pathOf({ page: 'launch', id })} />
    </>
  );
}
