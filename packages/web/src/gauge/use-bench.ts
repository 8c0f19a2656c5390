import {
  emptyGrid,
  type Gauge,
  hasReadings,
  type KeptPicture,
  type Sheet,
  sheetOf,
  textOfBytes,
  textOfGrid,
} from '@coreward/bench';
import { useEffect, useState } from 'react';
import type { GaugeAbout } from '../frame/address.ts';
import { useKeeping } from '../keeping/use-keeping.ts';
import type { StorageLike } from '../keeping/world.ts';
import { type Reopened, useReopened } from './use-reopened.ts';

/** What lies on the page of a gauge, and what can be done with it. */
export interface GaugeBench {
  readonly sheet: Sheet;
  readonly picture: File | null;
  /** The picture that earlier readings were taken from; it must be chosen anew. */
  readonly missing: KeptPicture | null;
  /** Readings of the bench book that are opened again; null: none are. */
  readonly reopened: Reopened | null;
  /** Why a file could not be taken. */
  readonly refused: string | null;
  readonly setText: (text: string) => void;
  readonly setSetting: (name: string, text: string) => void;
  /** A whole table, pasted, dropped or chosen: its settings go into their fields. */
  readonly take: (text: string) => void;
  readonly takeFile: (file: File) => Promise<void>;
  readonly clear: () => void;
}

/** Whether there is anything to be measured. */
export function isBegun(gauge: Gauge, { sheet, picture }: Pick<GaugeBench, 'sheet' | 'picture'>): boolean {
  if (gauge.takes === 'picture') return picture !== null;
  if (gauge.columns.some(({ needed }) => needed)) return hasReadings(sheet.text);
  return hasReadings(sheet.text) || Object.values(sheet.settings).some((text) => text.trim() !== '');
}

export function useBench(gauge: Gauge, about: GaugeAbout | null): GaugeBench {
  const { session } = useKeeping().world;
  const key = `coreward.draft.gauge ${gauge.name}`;
  const reopened = useReopened(about?.kind === 'reading' ? about.id : null);
  const [sheet, setSheet] = useState<Sheet>(() =>
    about?.kind === 'reading' ? emptySheet(gauge) : (remembered(session, key) ?? emptySheet(gauge)),
  );
  const [picture, setPicture] = useState<File | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const arrived = reopened?.state === 'here' ? reopened.sheet : null;
  useEffect(() => {
    if (arrived !== null) setSheet(arrived);
  }, [arrived]);
  const change = (next: Sheet): void => {
    setSheet(next);
    setRefused(null);
    try {
      session.setItem(key, JSON.stringify(next));
    } catch {
      // it is still on the page
    }
  };
  const take = (text: string): void => {
    const taken = sheetOf(gauge, text);
    change({ text: taken.text, settings: { ...sheet.settings, ...taken.settings } });
  };
  return {
    sheet,
    picture,
    missing: picture === null && reopened?.state === 'here' ? reopened.picture : null,
    reopened,
    refused,
    setText: (text) => change({ ...sheet, text }),
    setSetting: (name, text) => change({ ...sheet, settings: { ...sheet.settings, [name]: text } }),
    take,
    takeFile: async (file) => {
      if (gauge.takes === 'picture' && !/\.json$/u.test(file.name)) {
        setPicture(file);
        setRefused(null);
        // asked anew even if the settings are the same
        change({ ...sheet });
        return;
      }
      const told = await textIn(file);
      if (told.ok) take(told.text);
      else setRefused(told.why);
    },
    clear: () => {
      change(emptySheet(gauge));
      setPicture(null);
    },
  };
}

const emptySheet = (gauge: Gauge): Sheet => ({
  settings: {},
  text: gauge.columns.length === 0 ? '' : textOfGrid(emptyGrid(gauge)),
});

async function textIn(
  file: File,
): Promise<{ readonly ok: true; readonly text: string } | { readonly ok: false; readonly why: string }> {
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const decode = (all: Uint8Array, encoding: string): string =>
      new TextDecoder(encoding, { fatal: true }).decode(all);
    return { ok: true, text: textOfBytes(bytes, file.name, decode) };
  } catch (error) {
    return { ok: false, why: error instanceof Error ? error.message : String(error) };
  }
}

function remembered(storage: StorageLike, key: string): Sheet | null {
  try {
    const found: unknown = JSON.parse(storage.getItem(key) ?? 'null');
    return typeof found === 'object' && found !== null ? (found as Sheet) : null;
  } catch {
    return null;
  }
}
