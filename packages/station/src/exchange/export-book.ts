import type { BenchBook } from '../bench-book/bench-book.ts';
import type { KeptDocument } from '../bench-book/kept-document.ts';
import { type Archive, type ArchivedDocument, type ArchivedInstrument, archivedKinds } from './archive.ts';

/** Everything in a book, in an order that depends on nothing but what is in it. */
export function exportBook(book: BenchBook): Archive {
  const documents = book.documents.all(archivedKinds).map(({ id, kind }) => archived(id, kind, book));
  const rank = (kind: ArchivedDocument['kind']) => archivedKinds.indexOf(kind);
  const instruments = book.readings.instruments().map(
    ({ on: _, setup, ...facts }): ArchivedInstrument => ({
      ...facts,
      setup: JSON.parse(setup),
      readings: [...book.readings.all(facts.id)],
    }),
  );
  return {
    coreward: 1,
    contents: 'bench book',
    documents: documents.sort((a, b) => rank(a.kind) - rank(b.kind) || (a.id < b.id ? -1 : 1)),
    entries: book.entriesInOrder().map((entry) => ({ ...entry, data: JSON.parse(entry.data) })),
    ...(instruments.length === 0 ? {} : { instruments }),
  };
}

function archived(id: string, kind: ArchivedDocument['kind'], book: BenchBook): ArchivedDocument {
  const inOrder: readonly KeptDocument[] = [...book.documents.versions(id)].reverse();
  return {
    id,
    kind,
    versions: inOrder.map(({ version, changed, putAway, invented, text }) => ({
      version,
      changed,
      putAway,
      invented,
      text,
    })),
  };
}
