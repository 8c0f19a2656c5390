import { createContext, useContext, useEffect, useSyncExternalStore } from 'react';
import type { Thing } from './change.ts';
import type { Keeping } from './keeping.ts';
import { contentOf, type HeldLaunch, type KeepingState } from './state.ts';

export const KeepingContext = createContext<Keeping | null>(null);

/** The keeping of this page. */
export function useKeeping(): Keeping {
  const keeping = useContext(KeepingContext);
  if (keeping === null) throw new Error('no keeping around this component');
  return keeping;
}

/** What is kept, as it changes. */
export function useKept(): KeepingState {
  const keeping = useKeeping();
  return useSyncExternalStore(keeping.subscribe, keeping.get);
}

/** A launch as this page has it. */
export interface ShownLaunch {
  readonly id: string;
  readonly text: string;
  readonly putAway: boolean;
  readonly invented: boolean;
}

/** A launch with its text, asked for if it is not here yet: `waiting` until it is, `null` if there is none by that id. */
export function useLaunch(id: string): ShownLaunch | 'waiting' | null {
  const keeping = useKeeping();
  const state = useKept();
  const thing: Thing = { kind: 'launch', id };
  const content = contentOf(state, thing);
  const held = state.launches.get(id);
  const isMissing = content === null && held !== undefined && held.text === null;
  const { connection } = state;
  useEffect(() => {
    // asked again when the station is back
    if (isMissing && connection !== 'lost') keeping.needLaunch(id).catch(() => {});
  }, [isMissing, connection, keeping, id]);
  if (content?.kind === 'document') {
    const { text, putAway, invented } = content.body;
    return { id, text, putAway, invented };
  }
  return isMissing || !state.loaded ? 'waiting' : null;
}

/** All launches in the order of their last change, with what is not kept yet. */
export function launchesOf(state: KeepingState): readonly HeldLaunch[] {
  const launches = new Map(state.launches);
  for (const { thing, content } of state.unkept) {
    if (thing.kind !== 'launch' || content.kind !== 'document') continue;
    const held = launches.get(thing.id);
    const { putAway, invented, text } = content.body;
    const before = held ?? { id: thing.id, version: 0, changed: '', name: '' };
    launches.set(thing.id, { ...before, putAway, invented, text });
  }
  // what is not kept yet has no time: it is the newest
  return [...launches.values()].sort((a, b) =>
    a.changed === '' ? -1 : b.changed === '' ? 1 : b.changed.localeCompare(a.changed),
  );
}
