import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Refusal } from '@coreward/bench';
import Sqlite, { type Database } from 'better-sqlite3';
import { tellingTrouble } from './book-trouble.ts';

/**
 * Holds a data folder for one station. The system lets go of it whenever the process ends, however it ends: it is a
 * lock on a file, not the file itself.
 */
export class FolderLock {
  readonly #db: Database;
  readonly #address: string;
  readonly #holds: boolean;

  /**
   * The lock of a folder; null if another station holds it and that is no hindrance.
   *
   * @param shared whether it is none
   * @throws {Refusal} if another station holds the folder and it is one, or if the folder cannot be written to
   */
  static taken(folder: string, shared: boolean): FolderLock | null {
    const lock = new FolderLock(folder);
    if (lock.#holds) return lock;
    if (shared) return null;
    throw heldRefusal(folder);
  }

  private constructor(folder: string) {
    this.#address = addressFile(folder);
    const path = join(folder, 'station-lock');
    this.#db = tellingTrouble(path, () => new Sqlite(path, { timeout: 0 }));
    this.#holds = tellingTrouble(path, () => isHeldBy(this.#db));
    if (!this.#holds) this.#db.close();
  }

  /** Leaves word of where the station is, for whoever finds the folder held. */
  tell(address: string): void {
    writeFileSync(this.#address, `${address}\n`, { mode: 0o600 });
  }

  release(): void {
    rmSync(this.#address, { force: true });
    this.#db.close();
  }
}

const addressFile = (folder: string): string => join(folder, 'station-address');

function isHeldBy(db: Database): boolean {
  try {
    db.exec('BEGIN EXCLUSIVE');
    return true;
  } catch (error) {
    if (error instanceof Sqlite.SqliteError && error.code === 'SQLITE_BUSY') return false;
    db.close();
    throw error;
  }
}

/** That another station has the book open, and where it is, if it has said so. */
export function heldRefusal(folder: string): Refusal {
  const address = stationAddress(folder);
  const at = address === null ? '' : `, at ${address}`;
  return new Refusal({
    where: folder,
    what: `another Coreward has this bench book open${at}`,
    mend: `${address === null ? 'Go on there' : `Open ${address}`}, or stop it with Ctrl-C, or name another folder with \`--data\`.`,
  });
}

/** Where the station that holds a folder is, if it has said so. */
export function stationAddress(folder: string): string | null {
  try {
    const said = readFileSync(addressFile(folder), 'utf8').trim();
    return /^https?:\/\/[\w.:[\]-]+\/$/u.exec(said)?.[0] ?? null;
  } catch {
    return null; // it has only just begun, or was killed before it could say
  }
}
