import { mostDataCharacters, mostEntriesAtOnce } from '@coreward/contract';
import type { BenchBook } from '../bench-book/bench-book.ts';
import { Declined } from '../declined.ts';
import { entryOf } from './answers.ts';
import type { SomeHandlers } from './call.ts';

/** What was done and read. */
export function entryHandlers(book: BenchBook): SomeHandlers<'entries' | 'writeEntry'> {
  return {
    entries({ query: { launch, kind, before } }) {
      if (before !== undefined && book.entry(before) === null) throw unknownEntry(before);
      const asked = { launch: launch ?? null, kind: kind ?? null, before: before ?? null };
      // one more than is shown tells whether there are more
      const found = book.entries({ ...asked, most: mostEntriesAtOnce + 1 });
      return {
        entries: found.slice(0, mostEntriesAtOnce).map(entryOf),
        more: found.length > mostEntriesAtOnce,
      };
    },
    writeEntry({ request: { write, kind, launch, data } }) {
      const text = JSON.stringify(data);
      if (text.length > mostDataCharacters) {
        throw new Declined('too long', {
          where: 'data',
          what: `${text.length} characters are more than the ${mostDataCharacters} that an entry may have`,
          mend: 'Write several entries.',
        });
      }
      if (launch !== null && book.documents.newest(launch)?.kind !== 'launch') throw unknownLaunch(launch);
      const kept = book.addEntry({ id: write, kind, launch, data: text });
      if (kept === null) {
        throw new Declined('refused', {
          where: `entry ${write}`,
          what: 'this name means something else in the bench book',
          mend: 'Send it under a new name.',
        });
      }
      return entryOf(kept);
    },
  };
}

const unknownEntry = (id: string): Declined =>
  new Declined('unknown', {
    where: `entry ${id}`,
    what: 'there is no such entry',
    mend: 'Begin with the newest: leave `before` out.',
  });

const unknownLaunch = (id: string): Declined =>
  new Declined('refused', {
    where: `launch ${id}`,
    what: 'there is no such launch',
    mend: 'Keep the launch first, or enter it without one.',
  });
