import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { expect, test } from 'vitest';
import { fakeWorld, inFolder } from '../fake-world.ts';
import { BenchBook } from './bench-book.ts';
import { FolderLock } from './folder-lock.ts';
import { bookVersion, headerOf, migrate, migrations } from './migrations.ts';
import { bookFile } from './open-database.ts';

const world = fakeWorld();
const launch = '11111111-1111-4111-8111-111111111111';
const write = '22222222-2222-4222-8222-222222222222';
const fresh = '55555555-5555-4555-8555-555555555555';
const entry = '33333333-3333-4333-8333-333333333333';

/** What stood in a book of each version, in that version's own words; what came with it is added to what was before. */
const contents: readonly string[] = [
  `INSERT INTO meta VALUES ('book', '44444444-4444-4444-8444-444444444444'), ('key', 'c2VjcmV0');
   INSERT INTO documents VALUES ('${launch}', 'launch');
   INSERT INTO versions VALUES ('${launch}', 1, '2026-11-01T08:00:00.000Z', 'first', 0, 0, 'one');
   INSERT INTO versions VALUES ('${launch}', 2, '2026-11-02T08:00:00.000Z', 'second', 1, 0, 'two');
   INSERT INTO changes VALUES (5, '${write}', '${launch}', 1), (9, '${launch}', '${launch}', 2);`,
  `INSERT INTO entries (id, time, kind, launch, data)
     VALUES ('${entry}', '2026-11-03T08:00:00.000Z', 'note', '${launch}', '{"text":"bright"}');
   INSERT INTO changes ("write", entry) VALUES ('${entry}', '${entry}');`,
  `INSERT INTO devices VALUES ('d', 'phone', x'0a', '2026-11-04T08:00:00.000Z', '2026-11-04T08:00:00.000Z');`,
  `INSERT INTO practice_acts ("write", walk, act) VALUES ('${write}', '${entry}', '{"do":"turn"}');`,
  `INSERT INTO instruments VALUES ('${fresh}', 'typed', 'W', 'meter', '{"kind":"typed","unit":"W"}', NULL, 2.5, 1, 0);
   INSERT INTO reading_blocks (instrument, first, last, count, gaps, saturated, min, max, mean, packed)
     VALUES ('${fresh}', 1, 1, 1, 0, 1, 3, 3, 3, x'01000000000000f03f000000000000084001');`,
];

/** A book as the program of a version left it. */
function bookOf(version: number, folder: string): void {
  const db = new Sqlite(bookFile(folder));
  db.pragma('journal_mode = WAL');
  for (let next = 1; next <= version; next += 1) {
    migrate(db, next);
    db.exec(contents[next - 1]!);
  }
  db.close();
}

test('there is content to try for every version', () => {
  expect(contents).toHaveLength(bookVersion);
  expect(bookVersion).toBeGreaterThanOrEqual(2);
});

for (let version = 1; version <= bookVersion; version += 1) {
  test(`a book of version ${version} opens with all that was in it`, () =>
    inFolder((folder) => {
      bookOf(version, folder);
      const book = new BenchBook(folder, world);
      expect(book.id).toBe('44444444-4444-4444-8444-444444444444');
      expect(book.documents.versions(launch).map(({ name, putAway }) => [name, putAway])).toEqual([
        ['second', true],
        ['first', false],
      ]);
      expect(
        book
          .changesSince(0, 10)
          .slice(0, 2)
          .map(({ sequence }) => sequence),
      ).toEqual([5, 9]);
      expect(book.entriesInOrder()).toHaveLength(version >= 2 ? 1 : 0);
      expect(book.devices.all()).toHaveLength(version >= 3 ? 1 : 0);
      expect(book.practiceActs(entry)).toHaveLength(version >= 4 ? 1 : 0);
      // the bytes are the doubles 1 and 3 by hand (IEEE 754: 0x3ff0…, 0x4008…), after the form and before the mark
      expect(book.readings.all(fresh)).toEqual(version >= 5 ? [{ t: 1, value: 3, saturated: true }] : []);
      expect(book.readings.instruments()).toHaveLength(version >= 5 ? 1 : 0);
      // sequence numbers go on where they were, so that no page mistakes a new change for an old one
      book.addEntry({ id: fresh, kind: 'note', launch, data: '1' });
      expect(book.sequence).toBe(version >= 2 ? 11 : 10);
      expect(book.faults()).toEqual([]);
      book.close();
    }));
}

for (let version = 1; version < bookVersion; version += 1) {
  test(`a book of version ${version} is copied whole before it is changed`, () =>
    inFolder((folder) => {
      bookOf(version, folder);
      new BenchBook(folder, world).close();
      const copies = readdirSync(join(folder, 'backups'));
      expect(copies).toEqual([`bench-book.v${version}.20261125T100000.000Z.sqlite`]);
      const copy = new Sqlite(join(folder, 'backups', copies[0]!), { readonly: true });
      expect(headerOf(copy).version).toBe(version);
      expect(copy.prepare('SELECT COUNT(*) FROM versions').pluck().get()).toBe(2);
      expect(copy.pragma('integrity_check', { simple: true })).toBe('ok');
      copy.close();
    }));
}

test('a book of today needs no copy', () =>
  inFolder((folder) => {
    new BenchBook(folder, world).close();
    new BenchBook(folder, world).close();
    expect(readdirSync(folder)).not.toContain('backups');
  }));

test('a migration that fails on the way leaves the book as it was', () =>
  inFolder((folder) => {
    bookOf(1, folder);
    const db = new Sqlite(bookFile(folder));
    db.exec('CREATE TABLE devices (in_the_way TEXT)'); // where version 3 wants its own
    expect(() => migrate(db)).toThrow('already exists');
    expect(headerOf(db).version).toBe(1);
    expect(db.prepare(`SELECT COUNT(*) FROM sqlite_schema WHERE name = 'entries'`).pluck().get()).toBe(0);
    db.close();
  }));

// A book of these versions may lie on someone's disk: what made it must stay as it is. The sums are of the texts
// themselves, a check against change and nothing else.
test('no migration has changed since it was first released', async () => {
  const { createHash } = await import('node:crypto');
  const sums = migrations.map((sql) => createHash('sha256').update(sql).digest('hex').slice(0, 12));
  expect(sums).toEqual(['3d40271edc8b', '89aaddb59f50', '34d00c43905b', '662462900e48', '91ae4e76b4c9']);
});

test('beside a station of an older program the book is left as it is', () =>
  inFolder((folder) => {
    bookOf(1, folder);
    const older = FolderLock.taken(folder, false);
    expect(() => new BenchBook(folder, world, { shared: true })).toThrow(
      'another Coreward has this bench book open',
    );
    const db = new Sqlite(bookFile(folder), { readonly: true });
    expect(headerOf(db).version).toBe(1);
    db.close();
    older?.release();
  }));
