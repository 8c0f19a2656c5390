import { Refusal, type RefusalParts } from '@coreward/bench';
import Sqlite from 'better-sqlite3';

/**
 * What an error of the disk or the database means to the owner of the bench book; null if it is a fault of ours.
 *
 * @param path the file or folder it happened to
 */
export function bookTrouble(error: unknown, path: string): RefusalParts | null {
  const code = codeOf(error);
  if (code === null) return null;
  const trouble = troubles.find(({ codes }) => codes.test(code));
  return trouble === undefined ? null : { where: path, what: trouble.what, mend: trouble.mend };
}

/** The disk or the database did not do as it was told: not a matter of what was to be kept. */
export class DiskTrouble extends Refusal {}

/**
 * Runs what touches the disk.
 *
 * @throws {DiskTrouble} for what is no fault of ours
 */
export function tellingTrouble<T>(path: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    const trouble = bookTrouble(error, path);
    throw trouble === null ? error : new DiskTrouble(trouble);
  }
}

function codeOf(error: unknown): string | null {
  if (error instanceof Sqlite.SqliteError) return error.code;
  const code = error instanceof Error ? (error as NodeJS.ErrnoException).code : undefined;
  return code ?? null;
}

/** Result codes of SQLite (sqlite.org/rescode.html, from memory) and of the system. */
const troubles = [
  {
    codes: /^(SQLITE_FULL|SQLITE_IOERR_WRITE|ENOSPC|EDQUOT)$/u,
    what: 'the disk is full, and nothing was changed',
    mend: 'Make room on it and try again; what stands on an open page can still be kept.',
  },
  {
    codes: /^(SQLITE_READONLY.*|SQLITE_CANTOPEN.*|SQLITE_PERM|EACCES|EPERM|EROFS)$/u,
    what: 'this place cannot be written to, so nothing can be kept there',
    mend: 'Give yourself the right to write there, or name another folder with `--data`.',
  },
  {
    codes: /^(SQLITE_NOTADB|SQLITE_CORRUPT.*)$/u,
    what: 'the bench book is damaged; it was left as it is',
    mend: 'Move it away and put the newest of the folder `backups` in its place, or import an export of yours.',
  },
  {
    codes: /^(SQLITE_BUSY.*|SQLITE_LOCKED.*)$/u,
    what: 'another program is writing to the bench book',
    mend: 'Close it, wait a moment and try again.',
  },
  {
    codes: /^SQLITE_IOERR.*$|^EIO$/u,
    what: 'the disk does not do as it is told',
    mend: 'Check the disk, and keep a copy of the folder elsewhere before you go on.',
  },
  {
    codes: /^(ENOTDIR|EEXIST)$/u,
    what: 'a file stands where a folder is needed',
    mend: 'Name another folder with `--data`.',
  },
  {
    codes: /^(ENOENT|ENAMETOOLONG|EINVAL|ELOOP)$/u,
    what: 'there can be no such folder',
    mend: 'Name another folder with `--data`.',
  },
];
