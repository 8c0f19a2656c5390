import { chmodSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Refusal } from '@coreward/bench';
import Sqlite from 'better-sqlite3';
import { expect, test } from 'vitest';
import { fakeWorld, inFolder } from '../fake-world.ts';
import { newId } from '../world.ts';
import { BenchBook } from './bench-book.ts';
import { bookTrouble } from './book-trouble.ts';
import { bookVersion } from './migrations.ts';
import { bookFile } from './open-database.ts';

const world = fakeWorld();

/** What opening a folder is refused with. */
function refusedWith(folder: string): string {
  try {
    new BenchBook(folder, world).close();
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
  return 'nothing was refused';
}

/** A folder with a book of one launch in it, closed. */
function written(folder: string): string {
  const book = new BenchBook(folder, world);
  write(book, 'x');
  book.close();
  return bookFile(folder);
}

const write = (book: BenchBook, text: string) =>
  book.write({
    write: newId(world),
    id: newId(world),
    base: 0,
    kind: 'launch',
    name: 'n',
    text,
    putAway: false,
    invented: false,
  });

test('a second station is refused, told where the first is, and let in after it', () =>
  inFolder((folder) => {
    const first = new BenchBook(folder, world);
    expect(refusedWith(folder)).toContain('another Coreward has this bench book open.');
    first.lock?.tell('http://127.0.0.1:5208/');
    expect(refusedWith(folder)).toContain('Open http://127.0.0.1:5208/, or stop it with Ctrl-C');
    first.close();
    expect(refusedWith(folder)).toBe('nothing was refused');
  }));

test('a look beside a running station is allowed, and disturbs neither', () =>
  inFolder((folder) => {
    const station = new BenchBook(folder, world);
    write(station, 'one');
    const look = new BenchBook(folder, world, { shared: true });
    expect(look.documents.all(['launch'])).toHaveLength(1);
    write(station, 'two');
    expect(look.documents.all(['launch'])).toHaveLength(2);
    look.close();
    station.close();
  }));

test('the book is for its owner’s eyes only', () =>
  inFolder((folder) => {
    const file = written(join(folder, 'new'));
    if (process.platform === 'win32') return; // rights there are inherited from the user's folder
    expect(statSync(file).mode & 0o077).toBe(0);
    expect(statSync(join(folder, 'new')).mode & 0o077).toBe(0);
  }));

// A real SQLITE_FULL, without a real full disk: SQLite may not grow the file any further.
test('a full disk is told, nothing of the write is kept, and what was there stays', () =>
  inFolder((folder) => {
    const book = new BenchBook(folder, world);
    write(book, 'small');
    book.limitPages(40);
    expect(() => write(book, 'x'.repeat(250_000))).toThrow('the disk is full, and nothing was changed');
    expect(book.documents.all(['launch']).map(({ text }) => text)).toEqual(['small']);
    expect(book.faults()).toEqual([]);
    book.limitPages(10_000);
    expect(write(book, 'x'.repeat(250_000)).kind).toBe('kept'); // room was made
    book.close();
  }));

test('a disk that is full is told by whatever way it is noticed', () => {
  for (const code of ['SQLITE_FULL', 'SQLITE_IOERR_WRITE']) {
    expect(bookTrouble(new Sqlite.SqliteError('', code), 'x')?.what).toContain('full');
  }
  expect(bookTrouble(Object.assign(new Error(), { code: 'ENOSPC' }), 'x')?.what).toContain('full');
  expect(bookTrouble(new Error('a slip'), 'x')).toBeNull();
});

/** Does `work` as someone without rights of their own, should the tests run as root. */
function asNobody<T>(work: () => T): T {
  const isRoot = process.geteuid?.() === 0;
  if (isRoot) process.seteuid?.(65534);
  try {
    return work();
  } finally {
    if (isRoot) process.seteuid?.(0);
  }
}

test('a folder that cannot be written to is refused, and left as it is', () =>
  inFolder((folder) => {
    const inside = join(folder, 'book');
    const file = written(inside);
    const before = readFileSync(file);
    for (const path of [file, `${inside}/station-lock`]) chmodSync(path, 0o444);
    for (const path of [folder, inside]) chmodSync(path, 0o555);
    const said = asNobody(() => refusedWith(inside));
    const saidOfNew = asNobody(() => refusedWith(join(inside, 'deeper')));
    for (const path of [folder, inside]) chmodSync(path, 0o755);
    expect(said).toContain('this place cannot be written to');
    expect(saidOfNew).toContain('this place cannot be written to');
    expect(readFileSync(file)).toEqual(before);
  }));

test('a file where the folder should be is refused', () =>
  inFolder((folder) => {
    writeFileSync(join(folder, 'file'), '');
    expect(refusedWith(join(folder, 'file'))).toContain('a file stands where a folder is needed');
    expect(refusedWith(join(folder, 'file', 'below'))).toContain('a file stands where a folder is needed');
  }));

// [how it is damaged, what is done to the bytes]
const damages: readonly (readonly [string, (bytes: Buffer) => Buffer])[] = [
  ['another kind of file', () => Buffer.from('Dear diary, today the laser was bright.\n'.repeat(200))],
  ['cut off in the middle', (bytes) => bytes.subarray(0, Math.floor(bytes.length / 2))],
  [
    'with a page overwritten',
    (bytes) => Buffer.concat([bytes.subarray(0, 4096), Buffer.alloc(4096, 0xa5), bytes.subarray(8192)]),
  ],
  ['with its header overwritten', (bytes) => Buffer.concat([Buffer.alloc(100, 7), bytes.subarray(100)])],
];

for (const [how, damage] of damages) {
  test(`a book that is ${how} is refused, and not a byte of it is changed`, () =>
    inFolder((folder) => {
      const file = written(folder);
      const damaged = damage(readFileSync(file));
      writeFileSync(file, damaged);
      expect(refusedWith(folder)).toContain('the bench book is damaged; it was left as it is');
      expect(readFileSync(file)).toEqual(damaged);
    }));
}

test('a book of a newer program is refused, and not a byte of it is changed', () =>
  inFolder((folder) => {
    const file = written(folder);
    const db = new Sqlite(file);
    db.pragma(`user_version = ${bookVersion + 1}`);
    db.pragma('journal_mode = DELETE');
    db.close();
    const before = readFileSync(file);
    expect(refusedWith(folder)).toContain(
      `of version ${bookVersion + 1}, and this Coreward knows versions up to`,
    );
    expect(readFileSync(file)).toEqual(before);
  }));

test('a first start that was cut short leaves nothing in the way of the next', () =>
  inFolder((folder) => {
    const db = new Sqlite(bookFile(folder));
    db.pragma('journal_mode = WAL'); // writes the first page, and nothing else
    db.close();
    expect(statSync(bookFile(folder)).size).toBeGreaterThan(0);
    expect(refusedWith(folder)).toBe('nothing was refused');
    new BenchBook(folder, world).close();
  }));

test('a database of another program is refused', () =>
  inFolder((folder) => {
    mkdirSync(folder, { recursive: true });
    const db = new Sqlite(bookFile(folder));
    db.exec('CREATE TABLE tea (kind TEXT)');
    db.close();
    expect(refusedWith(folder)).toContain('a database of another program');
    rmSync(bookFile(folder));
    expect(refusedWith(folder)).toBe('nothing was refused');
  }));
