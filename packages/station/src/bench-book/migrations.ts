import type { Database } from 'better-sqlite3';
import { documents } from './migration-1-documents.ts';
import { entries } from './migration-2-entries.ts';
import { devices } from './migration-3-devices.ts';
import { practice } from './migration-4-practice.ts';
import { readings } from './migration-5-readings.ts';

/** In order; the n-th makes version n out of version n − 1. */
export const migrations: readonly string[] = [documents, entries, devices, practice, readings];

/** What this program reads and writes. */
export const bookVersion = migrations.length;

/** Stands in the header of every bench book: "Core" in ASCII. */
export const applicationId = 0x436f7265;

/** What the header of a file says: an empty one is version 0 of nobody. */
export interface BookHeader {
  readonly applicationId: number;
  readonly version: number;
}

/** What the header of an open database says. */
export function headerOf(db: Database): BookHeader {
  return {
    applicationId: Number(db.pragma('application_id', { simple: true })),
    version: Number(db.pragma('user_version', { simple: true })),
  };
}

/** Brings a book to `version`, all of the way or not at all. */
export function migrate(db: Database, version = bookVersion): void {
  db.transaction(() => {
    for (let next = headerOf(db).version; next < version; next += 1) {
      db.exec(migrations[next]!);
      db.pragma(`user_version = ${next + 1}`);
    }
    db.pragma(`application_id = ${applicationId}`);
  }).exclusive();
}
