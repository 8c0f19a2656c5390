import {
  emptyGrid,
  type Gauge,
  hasReadings,
  type KeptPicture,
  type Sheet,
  settingsOfLaunch,
  sheetOf,
  textOfBytes,
  textOfGrid,
} from '@coreward/bench';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { GaugeAbout } from '../frame/address.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { useNewest } from '../keeping/use-newest.ts';
import type { StorageLike } from '../keeping/world.ts';
import { type Reopened, useReopened } from './use-reopened.ts';

/** What lies on the page of a gauge, and what can be done with it. */
export interface GaugeBench {
  readonly sheet: Sheet;
  readonly picture: File | null;
  /** Of a gauge that takes two pictures, the reverse beam's. */
  readonly reverse: File | null;
  /** The pictures that earlier readings were taken from; they must be chosen anew. */
  readonly missing: readonly KeptPicture[];
  /** Readings of the bench book that are opened again; null: none are. */
  readonly reopened: Reopened | null;
  /** Why a file could not be taken. */
  readonly refused: string | null;
  readonly setText: (text: string) => void;
  readonly setSetting: (name: string, text: string) => void;
  /** A whole table, pasted, dropped or chosen: its settings go into their fields. */
  readonly take: (text: string) => void;
  readonly takeFile: (file: File) => Promise<void>;
  /** A picture, by hand or by a camera, whose codes stand for light as sRGB has it. */
  readonly takePicture: (file: File, beam: Beam, by: 'file' | 'camera') => void;
  readonly clear: () => void;
}

/** Which of two pictures; of one, the forward beam's. */
export type Beam = 'forward' | 'reverse';

/** Whether there is anything to be measured. */
export function isBegun(
  gauge: Gauge,
  { sheet, picture, reverse }: Pick<GaugeBench, 'sheet' | 'picture' | 'reverse'>,
): boolean {
  if (gauge.takes === 'picture') return picture !== null;
  if (gauge.takes === 'two pictures') return picture !== null && reverse !== null;
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
  const [reverse, setReverse] = useState<File | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const newest = useNewest();
  const arrived = reopened?.state === 'here' ? reopened.sheet : null;
  // a picture may come late, and a key before the page is drawn anew: neither takes the other's part away
  const latest = useRef(sheet);
  const hold = useCallback((next: Sheet): void => {
    latest.current = next;
    setSheet(next);
  }, []);
  useEffect(() => {
    if (arrived !== null) hold(arrived);
  }, [arrived, hold]);
  const known = useKnown(gauge, about);
  const isUntouched = Object.keys(sheet.settings).length === 0;
  useEffect(() => {
    // a field that was emptied by hand stays empty
    if (isUntouched) hold({ ...latest.current, settings: { ...known, ...latest.current.settings } });
  }, [known, isUntouched, hold]);
  const change = (next: Sheet): void => {
    hold(next);
    setRefused(null);
    try {
      session.setItem(key, JSON.stringify(next));
    } catch {
      // it is still on the page
    }
  };
  const take = (text: string): void => {
    newest.forget();
    const taken = sheetOf(gauge, text);
    change({ text: taken.text, settings: { ...latest.current.settings, ...taken.settings } });
  };
  const takePicture = (file: File, beam: Beam, by: 'file' | 'camera'): void => {
    if (beam === 'forward') setPicture(file);
    else setReverse(file);
    // a camera's picture is a PNG, which a gauge would else take for codes in proportion to light
    const coded = by === 'camera' && gauge.settings.some(({ name }) => name === 'encoding');
    const now = latest.current;
    const settings = coded ? { encoding: 'srgb', ...now.settings } : now.settings;
    // asked anew even if the settings are the same
    change({ ...now, settings });
  };
  const missing = reopened?.state === 'here' ? reopened : null;
  return {
    sheet,
    picture,
    reverse,
    missing: [
      ...(picture === null && missing?.picture != null ? [missing.picture] : []),
      ...(reverse === null && missing?.reversePicture != null ? [missing.reversePicture] : []),
    ],
    reopened,
    refused,
    setText: (text) => {
      // a key that was meant for a table in whose place a file has come by now
      if (latest.current.text === sheet.text) change({ ...latest.current, text });
    },
    setSetting: (name, text) =>
      change({ ...latest.current, settings: { ...latest.current.settings, [name]: text } }),
    take,
    takePicture,
    takeFile: async (file) => {
      if (gauge.takes !== 'table' && !/\.json$/u.test(file.name)) {
        const isSecond = gauge.takes === 'two pictures' && picture !== null && reverse === null;
        takePicture(file, isSecond ? 'reverse' : 'forward', 'file');
        return;
      }
      const told = await newest.of(textIn(file));
      if (told.ok) take(told.text);
      else setRefused(told.why);
    },
    clear: () => {
      newest.forget();
      change(emptySheet(gauge));
      setPicture(null);
      setReverse(null);
    },
  };
}

/** What the launch one comes from has told already, where there is something else to be measured. */
function useKnown(gauge: Gauge, about: GaugeAbout | null): Sheet['settings'] {
  const { launches } = useKept();
  const text = about?.kind === 'launch' ? (launches.get(about.id)?.text ?? null) : null;
  const isOwn = gauge.takes !== 'table' || gauge.columns.some(({ needed }) => needed);
  return useMemo(() => (text === null || !isOwn ? {} : settingsOfLaunch(gauge, text)), [gauge, text, isOwn]);
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
