import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BenchBook } from '../bench-book/bench-book.ts';
import { giveExample, settingsId } from '../bench-book/first-start.ts';
import { fakeWorld, inFolder } from '../fake-world.ts';
import type { Archive } from './archive.ts';
import { archiveFiles, archiveFrom, archiveIn } from './archive-files.ts';
import { exportBook } from './export-book.ts';
import { importBook } from './import-book.ts';

const world = fakeWorld();

/** Any text that may be kept, odd ones more often than not. */
const text = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }).filter((one) => /^\P{Surrogate}*$/u.test(one)),
  fc.constantFrom('', '\ufeffcoreward: 1\r\n', 'a,"b"\r\nc', '\u0000', 'name: CON\n', '\u2028', '"', '\r'),
);
const time = fc
  .date({ min: new Date(0), max: new Date('2100-01-01'), noInvalidDate: true })
  .map((date) => date.toISOString());
const id = fc.uuid({ version: 4 });
const kind = fc.constantFrom('launch', 'laser', 'fibre', 'detector', 'reference', 'collimator', 'mirror');
const state = fc.record({ changed: time, putAway: fc.boolean(), invented: fc.boolean(), text });

const anyArchive: fc.Arbitrary<Archive> = fc
  .record({
    documents: fc.uniqueArray(
      fc.record({ id, kind, versions: fc.array(state, { minLength: 1, maxLength: 4 }) }),
      { maxLength: 5, selector: (one) => one.id },
    ),
    entries: fc.uniqueArray(
      fc.record({
        id,
        time,
        kind: fc.constantFrom('note', 'answer', 'caution read'),
        on: fc.nat(),
        // what JSON can say: −0 and undefined are not in it
        data: fc.oneof(
          fc.jsonValue().map((value) => JSON.parse(JSON.stringify(value))),
          // a key that careless copies of an object lose
          fc.constant(JSON.parse('{"__proto__": {"text": "kept"}, "constructor": 1}')),
        ),
      }),
      { maxLength: 6, selector: (one) => one.id },
    ),
  })
  .map(({ documents, entries }) => ({
    coreward: 1,
    contents: 'bench book',
    documents: documents.map(({ versions, ...rest }) => ({
      ...rest,
      versions: versions.map((one, index) => ({ version: index + 1, ...one })),
    })),
    entries: entries.map(({ on, ...rest }) => ({ ...rest, launch: documents[on % 6]?.id ?? null })),
  }));

/** The same book by way of a folder of files. */
async function throughFiles(archive: Archive): Promise<Archive> {
  // as bytes on a disk, whose names ignore case on some systems
  const files = new Map(
    [...archiveFiles(archive)].map(([path, one]) => [path.toLowerCase(), Buffer.from(one)]),
  );
  return archiveIn(async (path) => files.get(path.toLowerCase())?.toString('utf8') ?? '');
}

// what a table must not lose: gaps, signs of nothing, the last digit, the time of a restart
test('readings go out and come back the same, and once', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(
        fc.record({
          t: fc.double({ min: 0, max: 1e14, noNaN: true }),
          value: fc.option(fc.double({ noNaN: true, noDefaultInfinity: true })),
          saturated: fc.boolean(),
        }),
        { maxLength: 20 },
      ),
      (readings) =>
        inFolder(async (folder) => {
          const facts = {
            kind: 'typed',
            unit: 'W',
            name: 'meter, "old"',
            floor: 1e-9,
            saturation: null,
          } as const;
          const setup = { kind: 'typed', unit: 'W' } as const;
          const one = { id: settingsId, ...facts, setup, putAway: true, readings };
          const archive: Archive = {
            coreward: 1,
            contents: 'bench book',
            documents: [],
            entries: [],
            instruments: [one],
          };
          const book = new BenchBook(folder, world);
          expect(importBook(book, archive).readings).toBe(readings.length);
          expect(await throughFiles(exportBook(book))).toEqual(archive);
          expect(importBook(book, archive)).toMatchObject({ readings: 0, known: 1 });
          expect(book.readings.all(settingsId)).toEqual(readings);
          if (readings.length > 0) {
            const other = { ...one, readings: [{ t: 1, value: 123.5, saturated: false }] };
            expect(() => importBook(book, { ...archive, instruments: [other] })).toThrow('other readings');
          }
          book.close();
        }),
    ),
    { numRuns: 20 },
  );
});

// 20 runs: each opens two databases on a real disk
test('a book goes out and comes back the same, to the last character, as JSON and as a folder', async () => {
  await fc.assert(
    fc.asyncProperty(anyArchive, (archive) =>
      inFolder(async (folder) => {
        const first = new BenchBook(join(folder, 'first'), world);
        importBook(first, archive);
        const out = exportBook(first);
        first.close();
        expect({ ...out, documents: new Set(out.documents) }).toEqual({
          ...archive,
          documents: new Set(archive.documents),
        });
        expect(archiveFrom(JSON.stringify(out), 'x.json')).toEqual(out);
        const back = await throughFiles(out);
        expect(back).toEqual(out);
        const second = new BenchBook(join(folder, 'second'), world);
        importBook(second, back);
        expect(exportBook(second)).toEqual(out);
        // once more changes nothing
        expect(importBook(second, back)).toMatchObject({ versions: 0, entries: 0 });
        expect(exportBook(second)).toEqual(out);
        second.close();
      }),
    ),
    { numRuns: 20 },
  );
});

test('the first start gives one launch, the drawer beside it and its path, all marked as invented', () =>
  inFolder((folder) => {
    const book = new BenchBook(folder, world);
    giveExample(book);
    const all = book.documents.all([
      'launch',
      'laser',
      'collimator',
      'mirror',
      'fibre',
      'detector',
      'reference',
    ]);
    expect(all).toHaveLength(22);
    expect(all.every(({ invented, version }) => invented && version === 1)).toBe(true);
    expect(book.documents.all(['launch'])[0]?.name).toBe('green guide light to the observing loft');
    expect(JSON.parse(book.documents.newest(settingsId)?.text ?? '').drawerPath).toContain('space: 210 mm');
    book.close();
  }));

test('importing a book into one that has the example, too, does not double it', () =>
  inFolder((folder) => {
    const one = new BenchBook(join(folder, 'one'), world);
    giveExample(one);
    const [example] = one.documents.all(['launch']);
    one.write({ ...example!, write: '11111111-1111-4111-8111-111111111111', base: 1, putAway: true });
    const out = exportBook(one);
    one.close();
    world.wait(86_400_000);
    const other = new BenchBook(join(folder, 'other'), world);
    giveExample(other);
    expect(importBook(other, out)).toEqual({ documents: 1, versions: 1, entries: 0, readings: 0, known: 22 });
    expect(other.documents.all(['launch'])[0]?.putAway).toBe(true);
    other.close();
  }));
