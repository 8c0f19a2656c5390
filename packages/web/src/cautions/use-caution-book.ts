import {
  answersThatStand,
  type BookEntry,
  type KeptAnswer,
  type KeptReading,
  type StepName,
  stepsRead,
} from '@coreward/bench';
import { type KeptEntry, routes, type WriteEntry } from '@coreward/contract';
import { useEffect, useMemo, useState } from 'react';
import { ask } from '../keeping/client.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import type { World } from '../keeping/world.ts';

/** What the bench book holds about the cautions of a launch, and how something is entered. */
export interface CautionBook {
  /** `failed`: the station does not answer, and nothing is known; the worse counts. */
  readonly state: 'waiting' | 'held' | 'failed';
  readonly answers: ReadonlyMap<string, KeptAnswer>;
  readonly read: ReadonlyMap<StepName, KeptReading>;
  /** Enters one thing; `false` if the station did not take it. */
  readonly enter: (
    kind: 'answer' | 'caution read' | 'withdrawn',
    data: WriteEntry['data'],
  ) => Promise<boolean>;
}

/** The answers about any laser and what was read before the steps of one launch; fetched anew with every change. */
export function useCautionBook(launch: string): CautionBook {
  const keeping = useKeeping();
  const { sequence, loaded, connection } = useKept();
  const { world } = keeping;
  const [held, setHeld] = useState<readonly BookEntry[] | 'failed' | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: every change (`sequence`) may have written an entry
  useEffect(() => {
    if (!loaded) return;
    let left = false;
    entriesFor(world, launch).then(
      (found) => {
        if (!left) setHeld(found);
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
    return {
      state: held === null ? 'waiting' : held === 'failed' ? 'failed' : 'held',
      answers: answersThatStand(entries),
      read: stepsRead(entries),
      enter: async (kind, data) => {
        try {
          const entry = await ask(world, routes.writeEntry, {}, { write: world.newId(), kind, launch, data });
          // counts at once, whatever the live channel does
          setHeld((before) => [entry, ...(Array.isArray(before) ? before : [])]);
          return true;
        } catch {
          return false;
        }
      },
    };
  }, [held, world, launch]);
}

async function entriesFor(world: World, launch: string): Promise<readonly BookEntry[]> {
  // an answer belongs to a laser, not to the launch it was given in
  const [answers, read, withdrawn] = await Promise.all([
    allEntries(world, { kind: 'answer' }),
    allEntries(world, { kind: 'caution read', launch }),
    allEntries(world, { kind: 'withdrawn' }),
  ]);
  return [...withdrawn, ...read, ...answers];
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
