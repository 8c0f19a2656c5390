import { gaugeEntryKind, gaugePieceKind, keptGauge } from '@coreward/bench';
import type { KeptEntry } from '@coreward/contract';
import type { KeptVersion } from '../keeping/versions.ts';
import { bookTexts } from '../texts/book.ts';
import { whatDiffers } from './what-differs.ts';

/** One line of the bench book: a version of a launch or a part, or an entry. */
export type BookLine =
  | {
      readonly kind: 'version';
      readonly time: string;
      readonly version: KeptVersion;
      /** What this version says that the one before it did not, in words. */
      readonly what: readonly string[];
    }
  | {
      /** The parts of our invention that came with the book. */
      readonly kind: 'invented';
      readonly time: string;
      readonly parts: readonly KeptVersion[];
    }
  | {
      readonly kind: 'entry';
      readonly time: string;
      readonly entry: KeptEntry;
      readonly withdrawn: boolean;
      /** A move on a simulated bench. */
      readonly practised: boolean;
    };

/** Differences told on one line; a launch that was rewritten as a whole needs no more. */
const mostDifferences = 6;

/** The versions of a launch or a part as lines. */
export function versionLines(versions: readonly KeptVersion[]): readonly BookLine[] {
  const inOrder = [...versions].sort((a, b) => a.version - b.version);
  return inOrder.map((version, index) => ({
    kind: 'version',
    time: version.changed,
    version,
    what: whatWasDone(inOrder[index - 1] ?? null, version),
  }));
}

/** Lines in which the parts that came with the book, some dozen at one moment, are told as one. */
export function gathered(lines: readonly BookLine[]): readonly BookLine[] {
  const came = lines.flatMap((line) =>
    line.kind === 'version' && isGiven(line.version) ? [line.version] : [],
  );
  const time = came[0]?.changed;
  if (time === undefined) return lines;
  const others = lines.filter((line) => line.kind !== 'version' || !isGiven(line.version));
  return [...others, { kind: 'invented', time, parts: came }];
}

const isGiven = (one: KeptVersion): boolean => 'kind' in one && one.invented && one.version === 1;

export function entryLines(entries: readonly KeptEntry[]): readonly BookLine[] {
  const withdrawn = new Set(
    entries.flatMap(({ kind, data }) => {
      const of = kind === 'withdrawn' ? textIn(data, 'entry') : null;
      return of === null ? [] : [of];
    }),
  );
  const practice = new Set(entries.flatMap((entry) => (beginsPractice(entry) ? [sessionOf(entry)] : [])));
  return (
    entries
      // long readings lie in pieces; the entry that names them tells of all
      .filter(({ kind }) => kind !== 'withdrawn' && kind !== gaugePieceKind)
      .map((entry) => ({
        kind: 'entry',
        time: entry.time,
        entry,
        withdrawn: withdrawn.has(entry.id),
        practised: practice.has(sessionOf(entry)) && !beginsPractice(entry),
      }))
  );
}

/** The walk or the steer that an entry is a move of, or begins. */
const sessionOf = ({ id, data }: KeptEntry): string => textIn(data, 'walk') ?? textIn(data, 'session') ?? id;

/** A steer on a simulated bench begins with its `practice`, a walk with the seed of it. */
function beginsPractice({ data }: KeptEntry): boolean {
  const read = keysIn(data);
  return typeof read?.practice === 'number' || typeof keysIn(read?.begun)?.seed === 'number';
}

/** Lines by their day, newest first. */
export function byDay(lines: readonly BookLine[], dayOf: (time: string) => string) {
  const sorted = [...lines].sort((a, b) => b.time.localeCompare(a.time));
  const days = new Map<string, BookLine[]>();
  for (const line of sorted) days.set(dayOf(line.time), [...(days.get(dayOf(line.time)) ?? []), line]);
  return [...days];
}

/** What an entry says, for people. */
export function entryText({ data }: KeptEntry): string {
  const text = textIn(data, 'text');
  // what stands beside it is for the page that wrote it
  if (text !== null) return text;
  const told = ['question', 'answer', 'caution'].flatMap((key) => textIn(data, key) ?? []);
  return told.length > 0 ? told.join(': ') : JSON.stringify(data);
}

/** The gauge that an entry holds readings of; null for any other entry. */
export const gaugeIn = ({ kind, data }: KeptEntry): string | null =>
  kind === gaugeEntryKind ? (keptGauge(data)?.gauge ?? null) : null;

function textIn(data: KeptEntry['data'], key: string): string | null {
  const value = keysIn(data)?.[key];
  return typeof value === 'string' ? value : null;
}

function keysIn(data: KeptEntry['data'] | undefined): { readonly [key: string]: KeptEntry['data'] } | null {
  return typeof data === 'object' && data !== null && !Array.isArray(data) ? data : null;
}

function whatWasDone(before: KeptVersion | null, after: KeptVersion): readonly string[] {
  if (before === null) return ['kind' in after ? bookTexts.laidIn : bookTexts.made];
  const differs = whatDiffers(before, after);
  if (differs.length === 0) return [bookTexts.sameWords];
  if (differs.length <= mostDifferences) return differs;
  return [...differs.slice(0, mostDifferences), bookTexts.more(differs.length - mostDifferences)];
}
