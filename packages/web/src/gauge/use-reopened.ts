import {
  gaugeEntryKind,
  gaugePieceKind,
  type KeptPicture,
  keptGauge,
  type Sheet,
  sheetKept,
} from '@coreward/bench';
import { type KeptEntry, routes } from '@coreward/contract';
import { useEffect, useState } from 'react';
import { ask } from '../keeping/client.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import type { World } from '../keeping/world.ts';

/** Readings of the bench book on their way to the page. */
export type Reopened =
  | { readonly state: 'waiting' | 'failed' }
  | {
      readonly state: 'here';
      readonly time: string;
      readonly sheet: Sheet;
      readonly picture: KeptPicture | null;
      readonly reversePicture: KeptPicture | null;
    };

/** The readings that an entry of the bench book holds; `null` asks for none. */
export function useReopened(entry: string | null): Reopened | null {
  const { world } = useKeeping();
  const { loaded } = useKept();
  const [found, setFound] = useState<Reopened | null>(null);
  useEffect(() => {
    if (entry === null || !loaded) return;
    let left = false;
    reopen(world, entry).then(
      (one) => {
        if (!left) setFound(one);
      },
      () => {
        if (!left) setFound({ state: 'failed' });
      },
    );
    return () => {
      left = true;
    };
  }, [world, entry, loaded]);
  return entry === null ? null : (found ?? { state: 'waiting' });
}

async function reopen(world: World, id: string): Promise<Reopened> {
  const entry = (await until(world, gaugeEntryKind, (all) => all.some((one) => one.id === id))).find(
    (one) => one.id === id,
  );
  const kept = entry === undefined ? null : keptGauge(entry.data);
  if (entry === undefined || kept === null) return { state: 'failed' };
  const pieces =
    kept.pieces.length === 0
      ? []
      : await until(world, gaugePieceKind, (all) =>
          kept.pieces.every((piece) => all.some((one) => one.id === piece)),
        );
  const sheet = sheetKept(kept, (piece) => textOf(pieces.find((one) => one.id === piece)));
  return sheet === null
    ? { state: 'failed' }
    : {
        state: 'here',
        time: entry.time,
        sheet,
        picture: kept.picture,
        reversePicture: kept.reversePicture,
      };
}

/** Entries of a kind, newest first, as far back as it takes. */
async function until(
  world: World,
  kind: string,
  enough: (entries: readonly KeptEntry[]) => boolean,
): Promise<readonly KeptEntry[]> {
  const all: KeptEntry[] = [];
  for (;;) {
    const before = all.at(-1)?.id;
    const query = before === undefined ? { kind } : { kind, before };
    const { entries, more } = await ask(world, routes.entries, {}, null, query);
    all.push(...entries);
    if (enough(all) || !more || entries.length === 0) return all;
  }
}

function textOf(entry: KeptEntry | undefined): string | null {
  const data = entry?.data;
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return null;
  return typeof data.piece === 'string' ? data.piece : null;
}
