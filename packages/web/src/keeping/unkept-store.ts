import type { Unkept } from './change.ts';
import type { StorageLike } from './world.ts';

const prefix = 'coreward.unkept.';

/** Writes the browser remembers until the station has acknowledged them, in their order. What cannot be read is left alone. */
export function rememberedWrites(storage: StorageLike): readonly Unkept[] {
  return storage
    .keys()
    .filter((key) => key.startsWith(prefix))
    .flatMap((key) => {
      try {
        const found: unknown = JSON.parse(storage.getItem(key) ?? 'null');
        return isUnkept(found) ? [found] : [];
      } catch {
        return [];
      }
    })
    .sort((a, b) => a.order - b.order);
}

/** Whether the browser has taken it: its storage may be full or forbidden. */
export function remember(storage: StorageLike, write: Unkept): boolean {
  try {
    storage.setItem(prefix + write.write, JSON.stringify(write));
    return true;
  } catch {
    return false;
  }
}

export function forget(storage: StorageLike, write: string): void {
  storage.removeItem(prefix + write);
}

function isUnkept(found: unknown): found is Unkept {
  return (
    typeof found === 'object' &&
    found !== null &&
    'write' in found &&
    typeof found.write === 'string' &&
    'thing' in found &&
    'content' in found &&
    'order' in found &&
    typeof found.order === 'number'
  );
}
