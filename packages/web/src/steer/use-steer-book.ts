import { type BookEntry, type KeptSteer, steerEntryKind, steerThatStands } from '@coreward/bench';
import type { WriteEntry } from '@coreward/contract';
import { useMemo } from 'react';
import { allEntries, type HeldEntries, useEntries } from '../keeping/use-entries.ts';
import type { World } from '../keeping/world.ts';

/** The newest steer of a launch as the bench book holds it, and how something is added to it. */
export interface SteerBook {
  readonly state: HeldEntries['state'];
  readonly kept: KeptSteer | null;
  /** Enters a beginning or an answer; `false` if the station did not take it. */
  readonly enter: (data: WriteEntry['data']) => Promise<boolean>;
  /** Takes an entry back. */
  readonly withdraw: (entry: string) => Promise<boolean>;
}

export function useSteerBook(launch: string): SteerBook {
  const { state, entries, enter } = useEntries(launch, entriesFor);
  return useMemo(
    () => ({
      state,
      kept: steerThatStands(entries),
      enter: (data) => enter(steerEntryKind, data),
      withdraw: (entry) => enter('withdrawn', { entry }),
    }),
    [state, entries, enter],
  );
}

async function entriesFor(world: World, launch: string): Promise<readonly BookEntry[]> {
  const [withdrawn, steers] = await Promise.all([
    allEntries(world, { kind: 'withdrawn' }),
    allEntries(world, { kind: steerEntryKind, launch }),
  ]);
  return [...withdrawn, ...steers];
}
