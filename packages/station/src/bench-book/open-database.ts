import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { Refusal } from '@coreward/bench';
import Sqlite, { type Database } from 'better-sqlite3';
import type { World } from '../world.ts';
import { tellingTrouble } from './book-trouble.ts';
import { heldRefusal } from './folder-lock.ts';
import { applicationId, type BookHeader, bookVersion, headerOf, migrate } from './migrations.ts';

/** The file in the data folder that is the bench book. */
export const bookFile = (folder: string): string => join(folder, 'bench-book.sqlite');

/** Makes the folder, for its owner's eyes only. */
export function makeFolder(folder: string): void {
  tellingTrouble(folder, () => mkdirSync(folder, { recursive: true, mode: 0o700 }));
}

/** How a book is opened. */
export interface Opening {
  /** For a command that looks or adds a line beside a running station: leaves out the check of every page. */
  readonly shared: boolean;
  /** Whether the folder's lock is ours. */
  readonly held: boolean;
}

/**
 * The bench book of a folder, brought to this program's version; a new one where there is none. What cannot be opened
 * is left as it is.
 *
 * @throws {Refusal} if it is damaged, of a newer program, of another program, or in a place that cannot be written to;
 *   or of an older program that has it open
 */
export function openDatabase(folder: string, world: World, { shared, held }: Opening): Database {
  const file = bookFile(folder);
  return tellingTrouble(file, () => {
    if (!existsSync(file)) closeSync(openSync(file, 'a', 0o600));
    const before = statSync(file).size === 0 ? 0 : looked(file, shared);
    const db = new Sqlite(file, { fileMustExist: true });
    try {
      settle(db);
      if (before < bookVersion) {
        if (!held) throw heldRefusal(folder);
        if (before > 0) backUp(db, folder, before, world);
        migrate(db);
      }
      return db;
    } catch (error) {
      db.close();
      throw error;
    }
  });
}

/** Reads the header and checks the pages without writing; the version of the book. */
function looked(file: string, shared: boolean): number {
  const db = new Sqlite(file, { readonly: true, fileMustExist: true });
  try {
    const header = headerOf(db);
    if (isBlank(header, db)) return 0;
    if (header.applicationId !== applicationId) {
      throw new Refusal({
        where: file,
        what: 'this is a database of another program',
        mend: 'Move it away, or name another folder with `--data`.',
      });
    }
    if (header.version > bookVersion) {
      throw new Refusal({
        where: file,
        what: `the bench book is of version ${header.version}, and this Coreward knows versions up to ${bookVersion}; it was left as it is`,
        mend: 'Use the newer Coreward that wrote it, or name another folder with `--data`.',
      });
    }
    if (!shared) mustBeWhole(db, file);
    return header.version;
  } finally {
    db.close();
  }
}

/** A book whose first start was cut short before anything stood in it. */
const isBlank = ({ applicationId: id, version }: BookHeader, db: Database): boolean =>
  id === 0 && version === 0 && db.prepare('SELECT COUNT(*) FROM sqlite_schema').pluck().get() === 0;

function mustBeWhole(db: Database, file: string): void {
  const found = db.pragma('quick_check(1)', { simple: true });
  if (found === 'ok') return;
  throw new Sqlite.SqliteError(`${file}: ${String(found)}`, 'SQLITE_CORRUPT');
}

/** What is acknowledged is on the disk, not in a cache on the way to it. */
function settle(db: Database): void {
  db.pragma('busy_timeout = 5000');
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  // on macOS a plain sync leaves data in the drive's own cache; elsewhere this does nothing (from memory)
  db.pragma('fullfsync = ON');
  db.pragma('foreign_keys = ON');
  db.pragma('trusted_schema = OFF');
}

/** A whole copy of an older book, before it is changed: `backups/bench-book.v1.20261125T105257.000Z.sqlite`. */
function backUp(db: Database, folder: string, version: number, world: World): void {
  const backups = join(folder, 'backups');
  mkdirSync(backups, { recursive: true, mode: 0o700 });
  const time = world.now().toISOString().replace(/[-:]/gu, '');
  const copy = join(backups, `bench-book.v${version}.${time}.sqlite`);
  db.prepare('VACUUM INTO ?').run(copy);
  const file = openSync(copy, 'r+');
  fsyncSync(file);
  closeSync(file);
}
