import type { PartKind } from '@coreward/bench';
import { type JSX, useEffect, useMemo, useState } from 'react';
import { pathOf } from '../frame/address.ts';
import { PageLink } from '../frame/navigation.tsx';
import { PageHeading } from '../frame/page-heading.tsx';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { drawerTexts } from '../texts/drawer.ts';
import { partSummary } from './part-summary.ts';
import { NewPartTag, PartTag } from './part-tag.tsx';
import { partsOf, type ShownPart } from './parts.ts';
import { WayBetween } from './way-between.tsx';
import './drawer.css';

const here = pathOf({ page: 'drawer' });

/** What makes the beam, and what takes it; side by side where there is room. */
const sides: readonly (readonly PartKind[])[] = [
  ['laser', 'collimator', 'reference'],
  ['fibre', 'mirror', 'detector'],
];

/** The parts one owns, kind by kind, each unfolding into its fields. */
export function DrawerPage(): JSX.Element {
  const state = useKept();
  const keeping = useKeeping();
  const parts = useMemo(() => partsOf(state), [state]);
  const [open, setOpen] = useState<string | null>(() => window.location.hash.slice(1) || null);
  const unfold = (id: string | null): void => {
    setOpen(id);
    // the part that is unfolded is part of the address
    window.history.replaceState(null, '', id === null ? here : `${here}#${id}`);
  };
  const [arrived] = useState(open);
  useEffect(() => {
    if (state.loaded && arrived !== null) document.getElementById(arrived)?.scrollIntoView();
  }, [state.loaded, arrived]);
  const away = parts.filter(({ putAway }) => putAway);
  const atHand = parts.filter(({ putAway }) => !putAway);
  const invented = atHand.filter((part) => part.invented);
  const put = ({ id, kind, name, text, invented: isInvented }: ShownPart, putAway: boolean): void =>
    keeping.change(
      { kind: 'part', id, part: kind },
      { text, putAway, invented: isInvented },
      putAway ? drawerTexts.whatAway(name) : drawerTexts.whatBack(name),
      here,
    );
  return (
    <>
      <PageHeading title={drawerTexts.title} />
      <p>{drawerTexts.intro}</p>
      {!state.loaded && parts.length === 0 && <p className="quiet">{drawerTexts.waiting}</p>}
      {invented.length > 0 && (
        <p className="quiet">
          {drawerTexts.inventedAll}{' '}
          <button
            type="button"
            className="quiet-button"
            onClick={() => {
              for (const part of invented) put(part, true);
            }}
          >
            {drawerTexts.putInventedAway}
          </button>
        </p>
      )}
      <div className="drawer">
        {sides.map((kinds) => (
          <div key={kinds.join()} className="drawer-side">
            {kinds.map((kind) => (
              <Compartment
                key={kind}
                kind={kind}
                parts={atHand.filter((part) => part.kind === kind)}
                all={parts}
                open={open}
                onOpen={unfold}
              />
            ))}
          </div>
        ))}
      </div>
      <WayBetween />
      {away.length > 0 && (
        <details className="more">
          <summary>{drawerTexts.away(away.length)}</summary>
          <ul className="parts">
            {away.map((part) => (
              <li key={part.id}>
                {part.name} <span className="quiet">{partSummary(part)}</span>{' '}
                <PageLink to={{ page: 'part-versions', id: part.id }} className="quiet">
                  {drawerTexts.versions}
                </PageLink>{' '}
                <button
                  type="button"
                  className="quiet-button"
                  aria-label={`${drawerTexts.bringBack}: ${part.name}`}
                  onClick={() => put(part, false)}
                >
                  {drawerTexts.bringBack}
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

interface CompartmentProps {
  readonly kind: PartKind;
  readonly parts: readonly ShownPart[];
  readonly all: readonly ShownPart[];
  readonly open: string | null;
  readonly onOpen: (id: string | null) => void;
}

function Compartment({ kind, parts, all, open, onOpen }: CompartmentProps): JSX.Element {
  const [adding, setAdding] = useState(false);
  const words = drawerTexts.kinds[kind];
  return (
    <section className="compartment" aria-label={words.many}>
      <h2>{words.many}</h2>
      {parts.length === 0 && !adding && <p className="quiet">{drawerTexts.none}</p>}
      <ul className="parts">
        {parts.map((part) => (
          <li key={part.id} id={part.id}>
            <button
              type="button"
              className="part"
              aria-expanded={open === part.id}
              onClick={() => onOpen(open === part.id ? null : part.id)}
            >
              <span className="part-name">{part.name}</span>
              <span className="part-summary">{partSummary(part)}</span>
              {part.invented && <span className="mark">{drawerTexts.invented}</span>}
            </button>
            {open === part.id && <PartTag part={part} parts={all} />}
          </li>
        ))}
      </ul>
      {adding ? (
        <NewPartTag
          kind={kind}
          parts={all}
          onGiveUp={() => setAdding(false)}
          onKept={(id) => {
            setAdding(false);
            onOpen(id);
          }}
        />
      ) : (
        <button type="button" className="quiet-button" onClick={() => setAdding(true)}>
          {drawerTexts.add(kind)}
        </button>
      )}
    </section>
  );
}
