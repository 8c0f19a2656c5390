import type { JSX } from 'react';
import { PageLink } from '../frame/navigation.tsx';
import { PageHeading } from '../frame/page-heading.tsx';
import { timeText } from '../frame/time-text.ts';
import type { HeldLaunch } from '../keeping/state.ts';
import { launchesOf, useKeeping, useKept } from '../keeping/use-keeping.ts';
import { startTexts } from '../texts/start.ts';
import { launchName } from './launch-name.ts';
import './start.css';

/** Where one begins: what this is, our example beside an empty bench, and one's own launches. */
export function StartPage(): JSX.Element {
  const state = useKept();
  const launches = launchesOf(state);
  const shown = launches.filter(({ putAway }) => !putAway);
  const own = shown.filter(({ invented }) => !invented);
  const examples = shown.filter(({ invented }) => invented);
  const away = launches.filter(({ putAway }) => putAway);
  return (
    <>
      <PageHeading title={startTexts.title} />
      {state.loaded || launches.length > 0 ? (
        <>
          <p className="quiet">{startTexts.whatIsOne}</p>
          <div className="benches">
            {own.length === 0 ? (
              <section className="bench bench-empty">
                <h2>{startTexts.emptyTitle}</h2>
                <p>{startTexts.emptyText}</p>
                <Begin />
              </section>
            ) : (
              <section className="own-launches">
                <h2>{startTexts.own}</h2>
                <Launches launches={own} />
                <Begin />
              </section>
            )}
            {examples.length > 0 && (
              <section className="bench">
                <h2>{startTexts.exampleTitle}</h2>
                <p>{startTexts.exampleText}</p>
                <Launches launches={examples} />
              </section>
            )}
          </div>
          {away.length > 0 && (
            <details className="more">
              <summary>{startTexts.putAwayList(away.length)}</summary>
              <Launches launches={away} />
            </details>
          )}
          {own.length === 0 ? (
            <>
              <h2>{startTexts.firstLabel}</h2>
              <First />
            </>
          ) : (
            <details className="more">
              <summary>{startTexts.firstLabel}</summary>
              <First />
            </details>
          )}
        </>
      ) : (
        <p className="quiet">{startTexts.waiting}</p>
      )}
    </>
  );
}

function First(): JSX.Element {
  return (
    <>
      <ul className="first" aria-label={startTexts.firstLabel}>
        {startTexts.first.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <h2>{startTexts.hazardsLabel}</h2>
      <ul className="first" aria-label={startTexts.hazardsLabel}>
        {startTexts.hazards.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}

function Begin(): JSX.Element {
  return (
    <p>
      <PageLink to={{ page: 'new' }} className="act">
        {startTexts.begin}
      </PageLink>
    </p>
  );
}

function Launches({ launches }: { readonly launches: readonly HeldLaunch[] }): JSX.Element {
  return (
    <ul className="launches">
      {launches.map((launch) => (
        <li key={launch.id}>
          <LaunchLine launch={launch} />
        </li>
      ))}
    </ul>
  );
}

function LaunchLine({ launch }: { readonly launch: HeldLaunch }): JSX.Element {
  const keeping = useKeeping();
  const { id, name, version, changed, putAway, invented, text } = launch;
  const called = text === null ? name : launchName(text);
  const put = async (away: boolean): Promise<void> => {
    const held = await keeping.textOfLaunch(id);
    if (held === null) return;
    const what = away ? startTexts.whatPutAway(called) : startTexts.whatBroughtBack(called);
    keeping.change({ kind: 'launch', id }, { text: held, putAway: away, invented }, what, '/');
  };
  return (
    <>
      <PageLink to={{ page: 'launch', id }} className="launch-name">
        {called}
      </PageLink>
      <span className="facts">
        {invented && <span className="mark">{startTexts.invented}</span>}
        {version > 0 ? (
          <>
            <span>{startTexts.changed(timeText(changed))}</span>{' '}
            <PageLink to={{ page: 'versions', id }}>{startTexts.version(version)}</PageLink>
          </>
        ) : (
          <span>{startTexts.notKept}</span>
        )}
        <button
          type="button"
          className="quiet-button"
          aria-label={`${putAway ? startTexts.bringBack : startTexts.putAway}: ${called}`}
          onClick={() => void put(!putAway)}
        >
          {putAway ? startTexts.bringBack : startTexts.putAway}
        </button>
      </span>
    </>
  );
}
