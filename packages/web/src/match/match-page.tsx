import {
  assembleLaunch,
  drawerOfParts,
  type MatchPurpose,
  type MatchRow,
  matchPurposes,
  otherModesRule,
  Refusal,
  usableFirstText,
  writeLaunch,
} from '@coreward/bench';
import { type JSX, useMemo, useState } from 'react';
import { partsOf, type ShownPart } from '../drawer/parts.ts';
import { pathOf } from '../frame/address.ts';
import { PageLink, useGo } from '../frame/navigation.tsx';
import { PageHeading } from '../frame/page-heading.tsx';
import { useSettings } from '../frame/theme-choice.tsx';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { matchTexts } from '../texts/match.ts';
import { accentFor } from '../theme/accent.ts';
import { MatchGrid } from './match-grid.tsx';
import { MatchTable } from './match-table.tsx';
import type { MatchQuestion } from './protocol.ts';
import { type Matching, useMatch } from './use-match.ts';
import './match.css';

const here = pathOf({ page: 'match' });

/** The drawer's combinations ranked for one purpose, as a map and as a table; each leads into a launch. */
export function MatchPage(): JSX.Element {
  const state = useKept();
  const keeping = useKeeping();
  const go = useGo();
  const { drawerPath } = useSettings();
  const [choice, setChoice] = useChoice();
  const parts = useMemo(() => partsOf(state).filter(({ putAway }) => !putAway), [state]);
  const lasers = parts.filter(({ kind }) => kind === 'laser').map(({ name }) => name);
  const laser = choice.laser !== null && lasers.includes(choice.laser) ? choice.laser : null;
  const canMatch = lasers.length > 0 && parts.some(({ kind }) => kind === 'fibre');
  const drawer = parts.map(({ kind, text }) => ({ kind, text }));
  const question: MatchQuestion | null =
    state.loaded && canMatch ? { parts: drawer, way: drawerPath, purpose: choice.purpose, laser } : null;
  const matching = useMatch(question);
  const { result, isFresh } = matching;

  const colours = useMemo(() => coloursOf(parts), [parts]);

  const make = (row: MatchRow): void => {
    const read = drawerOfParts(drawer, drawerPath);
    // as it was matched: whoever builds it turns the focus
    const collimators = read.collimators.map((one) => ({ ...one, focus: { kind: 'best' } as const }));
    const launch = assembleLaunch({ ...read, collimators }, row);
    const body = { text: writeLaunch(launch), putAway: false, invented: false };
    const id = keeping.newLaunch(body, matchTexts.whatMade(launch.name), here);
    go({ page: 'launch', id });
  };
  return (
    <>
      <PageHeading title={matchTexts.title} />
      <p>{matchTexts.intro}</p>
      {state.loaded && !canMatch ? (
        <p>
          {matchTexts.noParts} <PageLink to={{ page: 'drawer' }}>{matchTexts.toDrawer}</PageLink>
        </p>
      ) : (
        <>
          <div className="match-choices no-print">
            <label>
              {matchTexts.purpose}
              <select
                value={choice.purpose}
                onChange={({ target }) => setChoice({ ...choice, purpose: purposeOf(target.value) })}
              >
                {matchPurposes.map((purpose) => (
                  <option key={purpose} value={purpose}>
                    {matchTexts.purposes[purpose]}
                  </option>
                ))}
              </select>
            </label>
            <label>
              {matchTexts.laser}
              <select
                value={laser ?? ''}
                onChange={({ target }) =>
                  setChoice({ ...choice, laser: target.value === '' ? null : target.value })
                }
              >
                <option value="">{matchTexts.allLasers}</option>
                {lasers.map((name) => (
                  <option key={name} value={name}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
            <Progress matching={matching} />
          </div>
          {isFresh && (
            <p className="print-only">
              {matchTexts.printed(matchTexts.purposes[choice.purpose], laser ?? matchTexts.allLasers)}
            </p>
          )}
          {result !== null && !isFresh && matching.state.kind !== 'progress' && (
            <p className="advice">{matchTexts.before}</p>
          )}
          {result !== null && (
            // of another question, or of a drawer that has changed since: to be read, and not to be built on
            <div inert={!isFresh}>
              {[...new Set(result.rows.map((row) => row.laser))].map((each) => (
                <MatchGrid
                  key={each}
                  rows={result.rows}
                  laser={each}
                  colour={colours.get(each) ?? null}
                  onMake={make}
                />
              ))}
              {result.rows.some(({ connector }) => connector === 'must not meet') && (
                <p className="quiet">{usableFirstText}</p>
              )}
              {result.rows.some(({ otherModes }) => otherModes !== null) && (
                <p className="quiet">{otherModesRule}</p>
              )}
              <MatchTable rows={result.rows} withLaser={laser === null} onMake={make} />
              {result.leftOut.length > 0 && (
                <details className="more">
                  <summary>{matchTexts.leftOut(result.leftOut.length)}</summary>
                  <ul>
                    {result.leftOut.map((one) => (
                      <li key={`${one.laser}\n${one.collimator}\n${one.fibre}`}>
                        {one.laser}, {matchTexts.combination(one.collimator, one.fibre)}: {one.why}
                      </li>
                    ))}
                  </ul>
                </details>
              )}
            </div>
          )}
        </>
      )}
    </>
  );
}

/** The colour of each laser's light. */
function coloursOf(parts: readonly ShownPart[]): ReadonlyMap<string, string> {
  const lasers = parts.filter(({ kind }) => kind === 'laser').map(({ kind, text }) => ({ kind, text }));
  try {
    const read = drawerOfParts(lasers, null).lasers;
    return new Map(read.map(({ name, wavelength }) => [name, accentFor(wavelength.value).colour]));
  } catch (error) {
    if (error instanceof Refusal) return new Map();
    throw error;
  }
}

function Progress({ matching: { state, stop, again } }: { readonly matching: Matching }): JSX.Element {
  return (
    <div className="match-progress" role="status">
      {state.kind === 'progress' && (
        <>
          <progress aria-label={matchTexts.title} max={Math.max(1, state.total)} value={state.done} />
          <span>{matchTexts.progress(state.done, state.total)}</span>
          <button type="button" onClick={stop}>
            {matchTexts.stop}
          </button>
        </>
      )}
      {state.kind === 'stopped' && (
        <>
          <span>{matchTexts.stopped}</span>
          <button type="button" onClick={again}>
            {matchTexts.again}
          </button>
        </>
      )}
      {state.kind === 'refused' && (
        <div className="refusal">
          <p>
            {matchTexts.refused} <PageLink to={{ page: 'drawer' }}>{matchTexts.toDrawer}</PageLink>
          </p>
          {state.refused.map(({ place, what, mend }) => (
            <p key={place + what}>{`${place}: ${what}. ${mend}`}</p>
          ))}
        </div>
      )}
      {state.kind === 'fault' && (
        <p className="refusal">
          {matchTexts.fault} <code>{state.message}</code>
        </p>
      )}
    </div>
  );
}

interface Choice {
  readonly purpose: MatchPurpose;
  readonly laser: string | null;
}

const purposeOf = (text: string | null): MatchPurpose =>
  matchPurposes.find((purpose) => purpose === text) ?? 'total';

/** What is asked for is part of the address. */
function useChoice(): readonly [Choice, (choice: Choice) => void] {
  const [choice, setChoice] = useState<Choice>(() => {
    const asked = new URLSearchParams(window.location.search);
    return { purpose: purposeOf(asked.get('for')), laser: asked.get('laser') };
  });
  const choose = (next: Choice): void => {
    const asked = new URLSearchParams({
      for: next.purpose,
      ...(next.laser === null ? {} : { laser: next.laser }),
    });
    window.history.replaceState(null, '', `${here}?${asked}`);
    setChoice(next);
  };
  return [choice, choose];
}
