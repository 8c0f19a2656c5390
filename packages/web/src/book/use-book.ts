import { type KeptEntry, type KeptLaunch, routes } from '@coreward/contract';
import { useEffect, useRef, useState } from 'react';
import { ask } from '../keeping/client.ts';
import type { Keeping } from '../keeping/keeping.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { type BookLine, entryLines, versionLines } from './book-line.ts';

/** What the bench book holds so far; fetched anew with every change there is. */
export function useBook(): readonly BookLine[] | 'failed' | null {
  const keeping = useKeeping();
  const { sequence, loaded, connection, launches } = useKept();
  /** Versions do not change: each is fetched once. */
  const known = useRef(new Map<string, KeptLaunch>());
  const [lines, setLines] = useState<readonly BookLine[] | 'failed' | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: every change (`sequence`) may have written a line
  useEffect(() => {
    if (!loaded) return;
    let left = false;
    fetchLines(keeping, [...launches.keys()], known.current, () => left).then(
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
  launches: readonly string[],
  known: Map<string, KeptLaunch>,
  left: () => boolean,
): Promise<readonly BookLine[]> {
  const lines: BookLine[] = [];
  for (const id of launches) {
    const { versions } = await keeping.versionsOf(id);
    const all: KeptLaunch[] = [];
    for (const { version } of versions) {
      if (left()) return lines;
      const key = `${id} ${version}`;
      const launch = known.get(key) ?? (await keeping.versionOf(id, version));
      known.set(key, launch);
      all.push(launch);
    }
    lines.push(...versionLines(all));
  }
  return [...lines, ...entryLines(await allEntries(keeping))];
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
