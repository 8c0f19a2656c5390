import { expect, test } from 'vitest';
import { fakeWorld, inFolder } from '../fake-world.ts';
import { newId } from '../world.ts';
import { BenchBook } from './bench-book.ts';
import type { Change, DocumentWrite } from './kept-document.ts';

const world = fakeWorld();

async function withBook(work: (book: BenchBook, folder: string) => void): Promise<void> {
  await inFolder((folder) => {
    const book = new BenchBook(folder, world);
    try {
      work(book, folder);
    } finally {
      book.close();
    }
  });
}

const launch = (changes: Partial<DocumentWrite> = {}): DocumentWrite => ({
  write: newId(world),
  base: 0,
  id: newId(world),
  kind: 'launch',
  name: 'evening',
  putAway: false,
  invented: false,
  text: 'coreward: 1\r\n# 8 µm, \u0000 and \u{1f52d}\n',
  ...changes,
});

test('what is written is there after closing and opening, to the last character', async () => {
  await inFolder((folder) => {
    const write = launch();
    const first = new BenchBook(folder, world);
    first.write(write);
    first.close();
    const again = new BenchBook(folder, world);
    expect(again.documents.newest(write.id)).toMatchObject({ text: write.text, version: 1, kind: 'launch' });
    expect(again.id).toBe(first.id);
    expect(again.faults()).toEqual([]);
    again.close();
  });
});

test('every earlier version stays, newest first', () =>
  withBook((book) => {
    const first = launch();
    book.write(first);
    book.write(launch({ id: first.id, base: 1, text: 'two', putAway: true }));
    book.write(launch({ id: first.id, base: 2, text: 'three' }));
    expect(book.documents.versions(first.id).map(({ version, text }) => [version, text])).toEqual([
      [3, 'three'],
      [2, 'two'],
      [1, first.text],
    ]);
    expect(book.documents.all(['launch'])).toHaveLength(1);
    expect(book.documents.version(first.id, 2)?.putAway).toBe(true);
    expect(book.documents.version(first.id, 4)).toBeNull();
  }));

test('a write that is sent twice is applied once and answered alike', () =>
  withBook((book) => {
    const write = launch();
    const once = book.write(write);
    world.wait(1000);
    const twice = book.write(write);
    expect(once).toMatchObject({ kind: 'kept', again: false });
    expect(twice).toEqual({ ...once, again: true });
    // also when the book has moved on in between
    book.write(launch({ id: write.id, base: 1, text: 'newer' }));
    expect(book.write(write)).toMatchObject({ kind: 'kept', again: true, document: { version: 1 } });
    expect(book.sequence).toBe(2);
  }));

test('a write on a stale base changes nothing and gets what the book holds', () =>
  withBook((book) => {
    const write = launch();
    book.write(write);
    book.write(launch({ id: write.id, base: 1, text: 'theirs' }));
    const mine = book.write(launch({ id: write.id, base: 1, text: 'mine' }));
    expect(mine).toMatchObject({ kind: 'stale', current: { version: 2, text: 'theirs' } });
    expect(book.write(launch({ base: 3 }))).toEqual({ kind: 'stale', current: null });
    expect(book.documents.versions(write.id)).toHaveLength(2);
  }));

test('a name that means something else is refused: another kind, another thing by the same write', () =>
  withBook((book) => {
    const write = launch();
    book.write(write);
    expect(book.write(launch({ id: write.id, kind: 'fibre', base: 1 }))).toEqual({ kind: 'taken' });
    expect(book.write(launch({ write: write.write }))).toEqual({ kind: 'taken' });
    expect(book.write({ ...write, text: 'other' })).toEqual({ kind: 'taken' });
    expect(book.sequence).toBe(1);
  }));

test('every change is told once, after it is kept, and can be told again from any point', () =>
  withBook((book) => {
    const told: Change[] = [];
    const stop = book.onChange((change) => told.push(change));
    const write = launch();
    book.write(write);
    book.write(write);
    const entry = { id: newId(world), kind: 'note', launch: write.id, data: '{"text":"bright"}' };
    book.addEntry(entry);
    book.addEntry(entry);
    stop();
    book.write(launch());
    expect(told.map(({ sequence, subject }) => [sequence, subject])).toEqual([
      [1, 'document'],
      [2, 'entry'],
    ]);
    expect(book.changesSince(0, 2)).toEqual(told);
    expect(book.changesSince(2, 10)).toHaveLength(1);
    expect(book.changesSince(3, 10)).toEqual([]);
  }));

test('entries are asked for by launch, by kind and page by page, newest first', () =>
  withBook((book) => {
    const on = launch();
    book.write(on);
    const ids = Array.from({ length: 5 }, (_, index) => {
      const id = newId(world);
      book.addEntry({
        id,
        kind: index % 2 === 0 ? 'note' : 'answer',
        launch: index < 3 ? on.id : null,
        data: 'null',
      });
      return id;
    });
    const asked = (launchId: string | null, kind: string | null, before: string | null, most = 10) =>
      book.entries({ launch: launchId, kind, before, most }).map(({ id }) => ids.indexOf(id));
    expect(asked(null, null, null)).toEqual([4, 3, 2, 1, 0]);
    expect(asked(null, null, null, 2)).toEqual([4, 3]);
    expect(asked(null, null, ids[3] ?? '', 2)).toEqual([2, 1]);
    expect(asked(on.id, null, null)).toEqual([2, 1, 0]);
    expect(asked(on.id, 'note', null)).toEqual([2, 0]);
  }));

test('an entry by a name that is taken is refused', () =>
  withBook((book) => {
    const entry = { id: newId(world), kind: 'note', launch: null, data: '1' };
    expect(book.addEntry(entry)).not.toBeNull();
    expect(book.addEntry({ ...entry, data: '2' })).toBeNull();
    const write = launch();
    book.write(write);
    expect(book.addEntry({ ...entry, id: write.write })).toBeNull();
  }));

test('several writes together are kept all or not at all', () =>
  withBook((book) => {
    const { write, base, ...state } = launch();
    expect(() =>
      book.together(({ putDocument }) => {
        putDocument({ ...state, version: base + 1, changed: '2026-11-25T10:00:00.000Z' }, write);
        throw new Error('the power went out');
      }),
    ).toThrow('the power went out');
    expect(book.documents.newest(state.id)).toBeNull();
    expect(book.isNew).toBe(true);
  }));

test('not even a slip of ours can change an earlier version or an entry', () =>
  inFolder(async (folder) => {
    const book = new BenchBook(folder, world);
    book.write(launch());
    book.addEntry({ id: newId(world), kind: 'note', launch: null, data: '1' });
    book.close();
    const { default: Sqlite } = await import('better-sqlite3');
    const db = new Sqlite(book.file);
    for (const slip of [
      `UPDATE versions SET text = 'other'`,
      'DELETE FROM versions',
      `UPDATE entries SET data = '2'`,
      'DELETE FROM entries',
    ]) {
      expect(() => db.exec(slip)).toThrow(/is never/u);
    }
    db.close();
  }));

test('a write that is sent again must build on the same version', () =>
  withBook((book) => {
    const write = launch();
    book.write(write);
    expect(book.write({ ...write, base: 1 })).toEqual({ kind: 'taken' });
    expect(book.documents.versions(write.id)).toHaveLength(1);
  }));
