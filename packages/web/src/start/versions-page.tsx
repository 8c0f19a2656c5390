import type { KeptLaunch } from '@coreward/contract';
import { type JSX, useEffect, useState } from 'react';
import { pathOf } from '../frame/address.ts';
import { PageLink } from '../frame/navigation.tsx';
import { PageHeading } from '../frame/page-heading.tsx';
import { timeText } from '../frame/time-text.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { startTexts } from '../texts/start.ts';
import { whatDiffers } from './what-differs.ts';
import './start.css';

/** Every version of a launch, newest first, with what each changed; any of them can be brought back. */
export function VersionsPage({ id }: { readonly id: string }): JSX.Element {
  const keeping = useKeeping();
  const held = useKept().launches.get(id);
  const [versions, setVersions] = useState<readonly KeptLaunch[] | 'failed' | null>(null);
  const newest = held?.version;
  useEffect(() => {
    let left = false;
    const fetchAll = async (): Promise<void> => {
      const { versions: facts } = await keeping.versionsOf(id);
      const all: KeptLaunch[] = [];
      for (const { version } of facts) {
        if (left) return;
        all.push(await keeping.versionOf(id, version));
      }
      if (!left) setVersions(all);
    };
    if (newest !== undefined) fetchAll().catch(() => setVersions('failed'));
    return () => {
      left = true;
    };
  }, [keeping, id, newest]);
  const words = startTexts.versions;
  const bring = ({ text, version, invented }: KeptLaunch): void =>
    keeping.change(
      { kind: 'launch', id },
      { text, putAway: false, invented },
      words.what(version),
      pathOf({ page: 'launch', id }),
    );
  return (
    <>
      <PageHeading title={words.title(held?.name ?? '')} />
      <p>
        <PageLink to={{ page: 'launch', id }}>{words.back}</PageLink>
      </p>
      {versions === null && <p className="quiet">{startTexts.waiting}</p>}
      {versions === 'failed' && <p role="alert">{words.failed}</p>}
      {Array.isArray(versions) && (
        <ol className="versions">
          {versions.map((one: KeptLaunch, index) => (
            <li key={one.version}>
              <h2>
                {startTexts.version(one.version)} <span className="quiet">{timeText(one.changed)}</span>{' '}
                {index === 0 && <span className="mark">{words.newest}</span>}
                {one.putAway && <span className="mark">{words.put}</span>}
              </h2>
              <What before={versions[index + 1] ?? null} after={one} />
              <details className="more">
                <summary>{words.read}</summary>
                <pre>{one.text}</pre>
              </details>
              {index > 0 && (
                <button type="button" onClick={() => bring(one)}>
                  {words.bring(one.version)}
                </button>
              )}
            </li>
          ))}
        </ol>
      )}
    </>
  );
}

function What({
  before,
  after,
}: {
  readonly before: KeptLaunch | null;
  readonly after: KeptLaunch;
}): JSX.Element {
  const words = startTexts.versions;
  if (before === null) return <p className="quiet">{words.first}</p>;
  const lines = whatDiffers(before.text, after.text);
  return lines.length === 0 ? (
    <p className="quiet">{words.same}</p>
  ) : (
    <ul aria-label={words.differs}>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
