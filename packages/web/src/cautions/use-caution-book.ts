import {
  answersThatStand,
  type BookEntry,
  type KeptAnswer,
  type KeptReading,
  type StepName,
  stepsRead,
} from '@coreward/bench';
import type { WriteEntry } from '@coreward/contract';
import { useMemo } from 'react';
import { allEntries, type HeldEntries, useEntries } from '../keeping/use-entries.ts';
import type { World } from '../keeping/world.ts';

/** What the bench book holds about the cautions of a launch, and how something is entered. */
export interface CautionBook {
  /** `failed`: the station does not answer, and nothing is known; the worse counts. */
  readonly state: HeldEntries['state'];
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
  const { state, entries, enter } = useEntries(launch, entriesFor);
  return useMemo(
    () => ({ state, answers: answersThatStand(entries), read: stepsRead(entries), enter }),
    [state, entries, enter],
  );
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
