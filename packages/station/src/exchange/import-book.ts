import { type Reading, Refusal, type RefusalParts } from '@coreward/bench';
import type { BenchBook } from '../bench-book/bench-book.ts';
import { isSameState } from '../bench-book/documents.ts';
import { anyName } from '../bench-book/readable.ts';
import { newId } from '../world.ts';
import type { Archive, ArchivedDocument, ArchivedEntry, ArchivedInstrument } from './archive.ts';

/** What an import came to. */
export interface Imported {
  /** Documents of which at least one version is new. */
  readonly documents: number;
  readonly versions: number;
  readonly entries: number;
  readonly readings: number;
  /** Documents, entries and instruments that were there already. */
  readonly known: number;
}

/**
 * Puts everything of an archive into a book: all of it, or nothing. What is there already stays; where both have a
 * document, one history must begin with the other, and the longer is kept.
 *
 * @throws {Refusal} if something goes by the same name in both and is not the same, or if the archive contradicts itself
 */
export function importBook(
  book: BenchBook,
  { documents, entries, instruments = [] }: Pick<Archive, 'documents' | 'entries' | 'instruments'>,
): Imported {
  const refused: RefusalParts[] = [];
  mustKnowLaunches({ documents, entries }, book, refused);
  return book.together(({ putDocument, putEntry }) => {
    let known = 0;
    let versions = 0;
    let touched = 0;
    for (const document of documents) {
      const fresh = freshVersions(document, book, refused);
      if (fresh.length === 0) known += 1;
      else touched += 1;
      versions += fresh.length;
      if (refused.length > 0) continue;
      for (const version of fresh) {
        const name = anyName(document.kind, version.text);
        putDocument({ ...version, id: document.id, kind: document.kind, name }, newId(book.world));
      }
    }
    let added = 0;
    for (const entry of entries) {
      if (isKnown(entry, book, refused)) known += 1;
      else {
        added += 1;
        if (refused.length === 0) putEntry({ ...entry, data: JSON.stringify(entry.data) }, entry.id);
      }
    }
    let readings = 0;
    for (const instrument of instruments) {
      const fresh = freshReadings(instrument, book, refused);
      if (fresh === null) known += 1;
      else readings += fresh.length;
      if (fresh === null || refused.length > 0) continue;
      const { readings: _, setup, ...facts } = instrument;
      // off, whatever it was: what comes from elsewhere opens nothing by itself
      const before = book.readings.instrument(facts.id);
      if (before === null) book.readings.putInstrument({ ...facts, setup: JSON.stringify(setup), on: false });
      book.readings.putReadings(facts.id, fresh, null);
    }
    if (refused.length > 0) throw new Refusal(refused); // which undoes what was put
    return { documents: touched, versions, entries: added, readings, known };
  });
}

function freshVersions(
  { id, kind, versions }: ArchivedDocument,
  book: BenchBook,
  refused: RefusalParts[],
): ArchivedDocument['versions'] {
  const gap = versions.findIndex(({ version }, index) => version !== index + 1);
  if (gap >= 0) {
    refused.push({
      where: `${kind} ${id}`,
      what: `version ${gap + 1} is missing or out of its turn`,
      mend: 'Import the export as it was written.',
    });
    return [];
  }
  const here = [...book.documents.versions(id)].reverse();
  const differs = here.findIndex((one, index) => {
    const there = versions[index];
    return there !== undefined && !isSameState(one, { ...there, name: one.name });
  });
  if (differs >= 0 || (here[0] !== undefined && here[0].kind !== kind)) {
    refused.push({
      where: `${kind} ${id}`,
      what: `version ${differs < 0 ? 1 : differs + 1} of it is another one in this bench book`,
      mend: 'Import into an empty folder with `--data`, and take over from there what you need.',
    });
    return [];
  }
  return versions.slice(here.length);
}

/** What is to be added to the readings that are there; null if nothing is. */
function freshReadings(
  { id, kind, unit, readings }: ArchivedInstrument,
  book: BenchBook,
  refused: RefusalParts[],
): readonly Reading[] | null {
  const before = book.readings.instrument(id);
  if (before === null) return readings;
  const here = book.readings.all(id);
  const isOther = (one: Reading, index: number) => {
    const there = readings[index];
    return (
      there !== undefined &&
      (there.t !== one.t || there.value !== one.value || there.saturated !== one.saturated)
    );
  };
  if (before.kind !== kind || before.unit !== unit || here.some(isOther)) {
    refused.push({
      where: `instrument ${id}`,
      what: 'this bench book has other readings by this name',
      mend: 'Import into an empty folder with `--data`.',
    });
    return null;
  }
  return readings.length > here.length ? readings.slice(here.length) : null;
}

function isKnown(entry: ArchivedEntry, book: BenchBook, refused: RefusalParts[]): boolean {
  const here = book.entry(entry.id);
  if (here === null) return false;
  const { time, kind, launch } = entry;
  const isSame =
    here.time === time &&
    here.kind === kind &&
    here.launch === launch &&
    here.data === JSON.stringify(entry.data);
  if (!isSame) {
    refused.push({
      where: `entry ${entry.id}`,
      what: 'this bench book has another entry by this name',
      mend: 'Import into an empty folder with `--data`.',
    });
  }
  return true;
}

/** An entry may name only a launch that there is. */
function mustKnowLaunches(
  { documents, entries }: Pick<Archive, 'documents' | 'entries'>,
  book: BenchBook,
  refused: RefusalParts[],
): void {
  const there = new Set(documents.map(({ id }) => id));
  for (const { id, launch } of entries) {
    if (launch === null || there.has(launch) || book.documents.newest(launch) !== null) continue;
    refused.push({
      where: `entry ${id}`,
      what: `there is no launch ${launch}, to which it belongs`,
      mend: 'Import the export as it was written.',
    });
  }
}
