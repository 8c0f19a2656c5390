import { join } from 'node:path';
import { expect, test } from 'vitest';
import { BenchBook } from '../bench-book/bench-book.ts';
import { fakeWorld, inFolder } from '../fake-world.ts';
import { newId } from '../world.ts';
import type { Archive } from './archive.ts';
import { archiveFrom, archiveIn } from './archive-files.ts';
import { exportBook } from './export-book.ts';
import { importBook } from './import-book.ts';

const world = fakeWorld();

const base: Archive = {
  coreward: 1,
  contents: 'bench book',
  documents: [
    {
      id: '11111111-1111-4111-8111-111111111111',
      kind: 'launch',
      versions: [
        { version: 1, changed: '2026-11-25T10:00:00.000Z', putAway: false, invented: false, text: 'one' },
      ],
    },
  ],
  entries: [],
};

/** The same with another text, kind or number in its only version. */
const altered = (changes: object, kindOfIt: 'launch' | 'fibre' = 'launch'): Archive => ({
  ...base,
  documents: base.documents.map((one) => ({
    ...one,
    kind: kindOfIt,
    versions: one.versions.map((version) => ({ ...version, ...changes })),
  })),
});

// [what is wrong with it, the archive, what is said]
const refused: readonly (readonly [string, Archive, string])[] = [
  ['another history', altered({ text: 'two' }), 'version 1 of it is another one in this bench book'],
  ['another kind', altered({}, 'fibre'), 'is another one in this bench book'],
  ['a gap', altered({ version: 2 }), 'version 1 is missing'],
  [
    'an entry of no launch',
    {
      ...base,
      entries: [
        {
          id: base.documents[0]!.id,
          time: '2026-11-25T10:00:00.000Z',
          kind: 'note',
          launch: '99999999-9999-4999-8999-999999999999',
          data: 1,
        },
      ],
    },
    'there is no launch 99999999',
  ],
];

for (const [what, archive, said] of refused) {
  test(`an import with ${what} is refused, and nothing of it is kept`, () =>
    inFolder((folder) => {
      const book = new BenchBook(folder, world);
      importBook(book, base);
      const before = exportBook(book);
      const more = { ...base.documents[0]!, id: '77777777-7777-4777-8777-777777777777' };
      const wrong = { ...archive, documents: [more, ...archive.documents] };
      expect(() => importBook(book, wrong)).toThrow(said);
      expect(exportBook(book)).toEqual(before);
      book.close();
    }));
}

test('what is no export is refused with the place', async () => {
  expect(() => archiveFrom('[]', 'x.json')).toThrow('x.json: an export of Coreward has something else here');
  expect(() => archiveFrom('{', 'x.json')).toThrow('this is not JSON');
  await expect(archiveIn(async () => 'a')).rejects.toThrow('coreward-export.json: this is not JSON');
});

test('an index cannot name a file outside its folder', async () => {
  for (const file of ['../secret', '/etc/passwd', 'a/../../b', 'C:\\x', '.ssh/id']) {
    const documents = base.documents.map((one) => ({
      ...one,
      versions: one.versions.map(({ text: _, ...facts }) => ({ ...facts, file })),
    }));
    const index = JSON.stringify({ ...base, documents, entries: 'entries.csv' });
    const asked: string[] = [];
    const read = async (path: string) => {
      asked.push(path);
      return index;
    };
    await expect(archiveIn(read)).rejects.toThrow('documents.0.versions.0.file');
    expect(asked).toEqual(['coreward-export.json']);
  }
});

const series = (
  ...readings: readonly { t: number; value: number | null; saturated: boolean }[]
): Archive => ({
  ...base,
  instruments: [
    {
      id: '22222222-2222-4222-8222-222222222222',
      kind: 'typed',
      unit: 'W',
      name: 'meter',
      setup: { kind: 'typed', unit: 'W' },
      floor: null,
      saturation: null,
      putAway: false,
      readings: [...readings],
    },
  ],
});
const [one, two] = [
  { t: 1_000, value: 0.5, saturated: false },
  { t: 2_000, value: null, saturated: false },
];

test('an instrument that comes from elsewhere is off, and its longer series goes on from the shorter one', () =>
  inFolder((folder) => {
    const book = new BenchBook(folder, world);
    importBook(book, series(one));
    expect(book.readings.instruments()).toMatchObject([{ name: 'meter', on: false, putAway: false }]);
    expect(importBook(book, series(one, two)).readings).toBe(1);
    expect(importBook(book, series(one))).toMatchObject({ readings: 0 });
    expect(book.readings.all('22222222-2222-4222-8222-222222222222')).toEqual([one, two]);
    // light that was too much is another reading, though it has the same value
    expect(() => importBook(book, series({ ...one, saturated: true }, two))).toThrow('other readings');
    book.close();
  }));

test('versions and entries that a clock was set back between go out and come in as they are', () =>
  inFolder(async (folder) => {
    const clock = fakeWorld();
    const book = new BenchBook(join(folder, 'a'), clock);
    importBook(book, base);
    const { id } = base.documents[0]!;
    clock.wait(-365 * 86_400_000);
    const state = { name: 'two', text: 'two', putAway: false, invented: false };
    book.write({ ...state, id, kind: 'launch', base: 1, write: newId(clock) });
    book.addEntry({ id: newId(clock), kind: 'note', launch: id, data: '1' });
    clock.wait(-86_400_000);
    book.addEntry({ id: newId(clock), kind: 'note', launch: id, data: '2' });
    expect(book.documents.newest(id)?.text).toBe('two');
    expect(book.entries({ launch: id, kind: null, before: null, most: 9 }).map(({ data }) => data)).toEqual([
      '2',
      '1',
    ]);
    const other = new BenchBook(join(folder, 'b'), clock);
    const out = exportBook(book);
    importBook(other, out);
    expect(exportBook(other)).toEqual(out);
    other.close();
    book.close();
  }));
