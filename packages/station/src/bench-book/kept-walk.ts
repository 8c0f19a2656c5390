import { type Launch, readLaunch } from '@coreward/bench';
import { type KeptWalk, keptWalk } from '@coreward/contract';
import { Declined } from '../declined.ts';
import type { BenchBook } from './bench-book.ts';
import type { BookEntry } from './kept-document.ts';

/** What the entries of a walk are called in the book. */
export const walkKind = 'walk';

const entriesAtOnce = 500;

/** The walk that goes on at a launch, from its entries; null if none was ever begun. */
export function newestWalk(book: BenchBook, launch: string): KeptWalk | null {
  const later: BookEntry[] = [];
  for (;;) {
    const before = later.at(-1)?.id ?? null;
    const found = book.entries({ launch, kind: walkKind, before, most: entriesAtOnce });
    for (const entry of found) {
      const begun = beginningIn(entry);
      if (begun !== null) {
        const done = later.toReversed().flatMap((one) => actOf(one, entry.id));
        return { ...begun, acts: done.map(({ act }) => act), times: done.map(({ time }) => time) };
      }
      later.push(entry);
    }
    if (found.length < entriesAtOnce) return null;
  }
}

/** Anything can be written as an entry, and anything imported: what is no beginning is none. */
function beginningIn({ id, launch, time, data }: BookEntry): KeptWalk | null {
  const { begun } = JSON.parse(data) as { readonly begun?: object };
  if (typeof begun !== 'object' || begun === null) return null;
  const read = keptWalk.safeParse({ ...begun, id, launch, begun: time, acts: [], times: [] });
  return read.success ? read.data : null;
}

/** What was done in this walk, and when; another page's act that came with it in an import is of no walk here. */
function actOf(
  { data, time }: BookEntry,
  walk: string,
): readonly { readonly act: KeptWalk['acts'][number]; readonly time: string }[] {
  const written = JSON.parse(data) as { readonly walk?: unknown; readonly act?: unknown };
  const read = keptWalk.shape.acts.safeParse([written.act]);
  return written.walk === walk && read.success ? read.data.map((act) => ({ act, time })) : [];
}

/**
 * The launch as it stood on the bench when the walk began.
 *
 * @throws {Declined} if it is not there
 */
export function launchOfWalk(book: BenchBook, { launch, version }: KeptWalk): Launch {
  const document = book.documents.version(launch, version);
  if (document === null) throw noLaunch(launch);
  return readLaunch(document.text, 'launch');
}

/** That there is no launch by this name. */
export const noLaunch = (id: string): Declined =>
  new Declined('unknown', {
    where: `launch ${id}`,
    what: 'there is no such launch',
    mend: 'Choose one that is there.',
  });
