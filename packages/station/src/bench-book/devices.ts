import type { Database } from 'better-sqlite3';

/** A machine that was let in. */
export interface Device {
  readonly id: string;
  readonly name: string;
  readonly paired: string;
  readonly seen: string;
}

/** `seen` is brought up to date no more often, ms: it is for people, and every write costs the disk a turn. */
const seenEvery = 5 * 60_000;

/** The devices on disk; of the secret of each only its hash. */
export function devicesIn(db: Database, now: () => Date) {
  const inOrder = db.prepare<[], Device>('SELECT id, name, paired, seen FROM devices ORDER BY paired, id');
  const byHash = db.prepare<[Uint8Array], Device>(
    'SELECT id, name, paired, seen FROM devices WHERE secret_hash = ?',
  );
  const add = db.prepare('INSERT INTO devices (id, name, secret_hash, paired, seen) VALUES (?, ?, ?, ?, ?)');
  const see = db.prepare('UPDATE devices SET seen = ? WHERE id = ?');
  const revoke = db.prepare('DELETE FROM devices WHERE id = ?');
  return {
    all: (): readonly Device[] => inOrder.all(),
    /** The device with this secret, and that it was here. */
    byHash(hash: Uint8Array): Device | null {
      const device = byHash.get(hash);
      if (device === undefined) return null;
      const time = now();
      if (time.getTime() - Date.parse(device.seen) < seenEvery) return device;
      try {
        see.run(time.toISOString(), device.id);
      } catch {
        return device; // a full disk keeps nobody from looking
      }
      return { ...device, seen: time.toISOString() };
    },
    add(id: string, name: string, hash: Uint8Array): Device {
      const time = now().toISOString();
      add.run(id, name, hash, time, time);
      return { id, name, paired: time, seen: time };
    },
    /** Whether there was one. */
    revoke: (id: string): boolean => revoke.run(id).changes > 0,
  };
}
