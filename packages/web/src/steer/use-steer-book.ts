import { type BookEntry, type KeptSteer, steerEntryKind, steerThatStands } from '@coreward/bench';
import { routes, type WriteEntry } from '@coreward/contract';
import { useEffect, useMemo, useState } from 'react';
import { allEntries } from '../cautions/use-caution-book.ts';
import { ask } from '../keeping/client.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';

/** The newest steer of a launch as the bench book holds it, and how something is added to it. */
export interface SteerBook {
  readonly state: 'waiting' | 'held' | 'failed';
  readonly kept: KeptSteer | null;
  /** Enters a beginning or an answer; `false` if the station did not take it. */
  readonly enter: (data: WriteEntry['data']) => Promise<boolean>;
  /** Takes an entry back. */
  readonly withdraw: (entry: string) => Promise<boolean>;
}

export function useSteerBook(launch: string): SteerBook {
  const { world } = useKeeping();
  const { sequence, loaded, connection } = useKept();
  const [held, setHeld] = useState<readonly BookEntry[] | 'failed' | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: every change (`sequence`) may have written an entry
  useEffect(() => {
    if (!loaded) return;
    let left = false;
    Promise.all([
      allEntries(world, { kind: 'withdrawn' }),
      allEntries(world, { kind: steerEntryKind, launch }),
    ]).then(
      ([withdrawn, steers]) => {
        if (!left) setHeld([...withdrawn, ...steers]);
      },
      () => {
        if (!left) setHeld((before) => before ?? 'failed');
      },
    );
    return () => {
      left = true;
    };
  }, [world, launch, sequence, loaded, connection]);

  return useMemo(() => {
    const entries = held === null || held === 'failed' ? [] : held;
    const write = async (kind: string, data: WriteEntry['data']): Promise<boolean> => {
      try {
        const entry = await ask(world, routes.writeEntry, {}, { write: world.newId(), kind, launch, data });
        // counts at once, whatever the live channel does
        setHeld((before) => [entry, ...(Array.isArray(before) ? before : [])]);
        return true;
      } catch {
        return false;
      }
    };
    return {
      state: held === null ? 'waiting' : held === 'failed' ? 'failed' : 'held',
      kept: steerThatStands(entries),
      enter: (data) => write(steerEntryKind, data),
      withdraw: (entry) => write('withdrawn', { entry }),
    };
  }, [held, world, launch]);
}
