import { type KeptEntry, routes } from '@coreward/contract';
import { useEffect, useRef, useState } from 'react';
import { ask } from '../keeping/client.ts';
import type { Keeping } from '../keeping/keeping.ts';
import type { KeepingState } from '../keeping/state.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { type KeptVersion, versionsOf } from '../keeping/versions.ts';
import { type BookLine, entryLines, gathered, versionLines } from './book-line.ts';

/** What the bench book holds so far; fetched anew with every change there is. */
export function useBook(): readonly BookLine[] | 'failed' | null {
  const keeping = useKeeping();
  const state = useKept();
  const { sequence, loaded, connection } = state;
  /** Versions do not change: each is fetched once. */
  const known = useRef(new Map<string, KeptVersion>());
  const [lines, setLines] = useState<readonly BookLine[] | 'failed' | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: every change (`sequence`) may have written a line
  useEffect(() => {
    if (!loaded) return;
    let left = false;
    fetchLines(keeping, state, known.current, () => left).then(
      (found) => {
        if (!left) setLines(found);
      },
      () => {
        if (!left) setLines((before) => before ?? 'failed');
      },
    );
    return () => {
      left = true;
    };
  }, [keeping, sequence, loaded, connection]);
  return lines;
}

async function fetchLines(
  keeping: Keeping,
  { launches, parts }: Pick<KeepingState, 'launches' | 'parts'>,
  known: Map<string, KeptVersion>,
  left: () => boolean,
): Promise<readonly BookLine[]> {
  const lines: BookLine[] = [];
  const fetchOf = async (kind: 'launch' | 'part', { id, version }: { id: string; version: number }) =>
    versionLines(await versionsOf(keeping.world, { kind, id }, version, known, left));
  for (const launch of launches.values()) lines.push(...(await fetchOf('launch', launch)));
  for (const part of parts.values()) lines.push(...(await fetchOf('part', part)));
  return [...gathered(lines), ...entryLines(await allEntries(keeping))];
}

async function allEntries({ world }: Keeping): Promise<readonly KeptEntry[]> {
  const all: KeptEntry[] = [];
  for (;;) {
    const before = all.at(-1)?.id;
    const { entries, more } = await ask(
      world,
      routes.entries,
      {},
      null,
      before === undefined ? {} : { before },
    );
    all.push(...entries);
    if (!more || entries.length === 0) return all;
  }
}
