import { expect, test } from 'vitest';
import { BenchBook } from '../bench-book/bench-book.ts';
import { fakeWorld, inFolder } from '../fake-world.ts';
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
