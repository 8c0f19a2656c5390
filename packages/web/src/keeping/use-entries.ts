import type { BookEntry } from '@coreward/bench';
import { type KeptEntry, routes, type WriteEntry } from '@coreward/contract';
import { useCallback, useEffect, useRef, useState } from 'react';
import { ask } from './client.ts';
import { useKeeping, useKept } from './use-keeping.ts';
import type { World } from './world.ts';

/** Some entries of the bench book as a page holds them, and how one is added. */
export interface HeldEntries {
  /** `failed`: the station does not answer, and nothing is known. */
  readonly state: 'waiting' | 'held' | 'failed';
  readonly entries: readonly BookEntry[];
  /** Enters one thing; `false` if the station did not take it. */
  readonly enter: (kind: string, data: WriteEntry['data']) => Promise<boolean>;
}

const none: readonly BookEntry[] = [];

/**
 * Entries that a page is about, fetched anew with every change.
 *
 * @param fetch the entries of a launch; the same function at every call
 */
export function useEntries(
  launch: string,
  fetch: (world: World, launch: string) => Promise<readonly BookEntry[]>,
): HeldEntries {
  const { world } = useKeeping();
  const { sequence, loaded, connection } = useKept();
  const [held, setHeld] = useState<readonly BookEntry[] | 'failed' | null>(null);
  const own = useRef<readonly KeptEntry[]>([]);
  const about = useRef(launch);
  about.current = launch;
  // biome-ignore lint/correctness/useExhaustiveDependencies: every change (`sequence`) may have written an entry
  useEffect(() => {
    if (!loaded) return;
    let left = false;
    fetch(world, launch).then(
      (found) => {
        if (!left) setHeld(withOwn(found, own.current, launch));
      },
      () => {
        if (!left) setHeld((before) => before ?? 'failed');
      },
    );
    return () => {
      left = true;
    };
  }, [world, launch, sequence, loaded, connection, fetch]);

  const enter = useCallback(
    async (kind: string, data: WriteEntry['data']): Promise<boolean> => {
      try {
        const entry = await ask(world, routes.writeEntry, {}, { write: world.newId(), kind, launch, data });
        // counts at once, whatever the live channel does
        own.current = [entry, ...own.current];
        if (about.current === launch) setHeld((before) => [entry, ...(Array.isArray(before) ? before : [])]);
        return true;
      } catch {
        return false;
      }
    },
    [world, launch],
  );
  return {
    state: held === null ? 'waiting' : held === 'failed' ? 'failed' : 'held',
    entries: held === null || held === 'failed' ? none : held,
    enter,
  };
}

/**
 * What was fetched, with what this page has entered in front: it was acknowledged, and an answer that knows nothing of it was
 * on its way before.
 *
 * @param own newest first, of whichever launch the page was about
 * @param launch what it is about now
 */
export function withOwn(
  found: readonly BookEntry[],
  own: readonly KeptEntry[],
  launch: string,
): readonly BookEntry[] {
  const known = new Set(found.map(({ id }) => id));
  return [...own.filter((entry) => entry.launch === launch && !known.has(entry.id)), ...found];
}

/** Every entry of a kind, newest first, however many there are. */
export async function allEntries(
  world: World,
  which: { readonly kind: string; readonly launch?: string },
): Promise<readonly KeptEntry[]> {
  const all: KeptEntry[] = [];
  for (;;) {
    const before = all.at(-1)?.id;
    const query = before === undefined ? which : { ...which, before };
    const { entries, more } = await ask(world, routes.entries, {}, null, query);
    all.push(...entries);
    if (!more || entries.length === 0) return all;
  }
}
