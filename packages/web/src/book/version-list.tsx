import { type JSX, useEffect, useRef, useState } from 'react';
import { timeText } from '../frame/time-text.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { type KeptVersion, type Versioned, versionsOf } from '../keeping/versions.ts';
import { versionTexts } from '../texts/versions.ts';
import { whatDiffers } from './what-differs.ts';
import './versions.css';

export interface VersionListProps {
  readonly thing: Versioned;
  /** The path of the page on which what is brought back is seen. */
  readonly where: string;
  /** Why a version cannot be brought back, in words; null: it can. */
  readonly hindered?: (version: KeptVersion) => string | null;
}

/** Every version of a launch or a part, newest first, with what each changed; any of them can be brought back. */
export function VersionList({ thing, where, hindered }: VersionListProps): JSX.Element {
  const keeping = useKeeping();
  const { launches, parts } = useKept();
  const known = useRef(new Map<string, KeptVersion>());
  const [versions, setVersions] = useState<readonly KeptVersion[] | 'failed' | null>(null);
  const { kind, id } = thing;
  const newest = (kind === 'launch' ? launches : parts).get(id)?.version;
  useEffect(() => {
    if (newest === undefined) return;
    let left = false;
    versionsOf(keeping.world, { kind, id }, newest, known.current, () => left).then(
      (all) => {
        if (!left) setVersions(all);
      },
      () => {
        if (!left) setVersions((before) => before ?? 'failed');
      },
    );
    return () => {
      left = true;
    };
  }, [keeping, kind, id, newest]);
  const bring = ({ text, version, invented }: KeptVersion): void =>
    keeping.change(thing, { text, putAway: false, invented }, versionTexts.what(version), where);
  if (versions === null) return <p className="quiet">{versionTexts.waiting}</p>;
  if (versions === 'failed') return <p role="alert">{versionTexts.failed}</p>;
  return (
    <ol className="versions">
      {versions.map((one, index) => (
        <li key={one.version}>
          <h2>
            {versionTexts.version(one.version)} <span className="quiet">{timeText(one.changed)}</span>{' '}
            {index === 0 && <span className="mark">{versionTexts.newest}</span>}
            {one.putAway && <span className="mark">{versionTexts.put}</span>}
          </h2>
          <What before={versions[index + 1] ?? null} after={one} />
          <details className="more">
            <summary>{versionTexts.read}</summary>
            <pre>{one.text}</pre>
          </details>
          {(index > 0 || one.putAway) && (
            <Bring version={one.version} why={hindered?.(one) ?? null} onBring={() => bring(one)} />
          )}
        </li>
      ))}
    </ol>
  );
}

function What({
  before,
  after,
}: {
  readonly before: KeptVersion | null;
  readonly after: KeptVersion;
}): JSX.Element {
  if (before === null) return <p className="quiet">{versionTexts.first}</p>;
  const lines = whatDiffers(before, after);
  return lines.length === 0 ? (
    <p className="quiet">{versionTexts.same}</p>
  ) : (
    <ul aria-label={versionTexts.differs}>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

function Bring({
  version,
  why,
  onBring,
}: {
  readonly version: number;
  readonly why: string | null;
  readonly onBring: () => void;
}): JSX.Element {
  if (why !== null) return <p className="quiet">{versionTexts.cannot(why)}</p>;
  return (
    <button type="button" onClick={onBring}>
      {versionTexts.bring(version)}
    </button>
  );
}
