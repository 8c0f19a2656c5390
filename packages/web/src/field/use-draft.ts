import { type FieldPath, type RefusedPlace, setInText, type WrittenTree } from '@coreward/bench';
import { useCallback, useMemo, useState } from 'react';
import type { StorageLike } from '../keeping/world.ts';
import type { OnWrite } from './field.tsx';

interface Edit {
  readonly path: FieldPath;
  readonly value: WrittenTree | null;
  readonly what: string;
}

export interface Draft {
  /** The document as it stands on the page, whether it can be kept or not. */
  readonly text: string;
  /** What keeps it from being kept; empty: it is kept. */
  readonly refused: readonly RefusedPlace[];
  readonly write: OnWrite;
  /** Back to what is kept. */
  readonly takeBack: () => void;
}

/**
 * A document in which every finished entry is kept at once if the whole can be read, and waits on the page (and in the
 * browser's storage, for a reload) if not. Several entries that only make sense together are kept together.
 *
 * @param text as it is kept
 * @param check what is refused of a text
 * @param keep takes a text that can be read, and what was done
 * @param storage where entries that cannot be kept yet wait, under `key`
 */
export function useDraft(
  text: string,
  check: (text: string) => readonly RefusedPlace[],
  keep: (text: string, what: string) => void,
  storage: StorageLike,
  key: string,
): Draft {
  const storeKey = `coreward.draft.${key}`;
  // what was typed for one document is never shown in another
  const [held, setHeld] = useState<{ readonly key: string; readonly edits: readonly Edit[] }>(() => ({
    key,
    edits: remembered(storage, storeKey),
  }));
  const edits = held.key === key ? held.edits : remembered(storage, storeKey);
  const drafted = useMemo(() => edits.reduce(withEdit, text), [edits, text]);
  const refused = useMemo(() => (edits.length === 0 ? [] : check(drafted)), [edits, drafted, check]);
  const hold = useCallback(
    (next: readonly Edit[]): void => {
      setHeld({ key, edits: next });
      try {
        if (next.length === 0) storage.removeItem(storeKey);
        else storage.setItem(storeKey, JSON.stringify(next));
      } catch {
        // it is still on the page
      }
    },
    [key, storage, storeKey],
  );
  const write: OnWrite = (path, value, what) => {
    const next = [...edits, { path, value, what }];
    const result = next.reduce(withEdit, text);
    if (check(result).length > 0) hold(next);
    else {
      hold([]);
      if (result !== text) keep(result, [...new Set(next.map((edit) => edit.what))].slice(-2).join(', '));
    }
  };
  return { text: drafted, refused, write, takeBack: () => hold([]) };
}

const withEdit = (text: string, { path, value }: Edit): string => setInText(text, path, value);

function remembered(storage: StorageLike, key: string): readonly Edit[] {
  try {
    const found: unknown = JSON.parse(storage.getItem(key) ?? '[]');
    return Array.isArray(found) ? (found as Edit[]) : [];
  } catch {
    return [];
  }
}
