import { Refusal, type RefusalParts } from '../refusal.ts';
import { type Place, whereIs } from './place.ts';

/** A place in a document and, apart from it, the key that its entries are known by (a part in a drawer has both). */
export interface Spot {
  /** `lasers.2.beam`: for refusals. */
  readonly path: string;
  /** `laser.beam`: for entries. */
  readonly key: string;
}

/** The document as a whole. */
export const documentSpot: Spot = { path: '', key: '' };

/** The spot of a key, or of the n-th of a list (from 1). */
export function under(spot: Spot, step: string | number): Spot {
  return { path: joined(spot.path, step), key: joined(spot.key, step) };
}

/** The spot of the n-th of a list (from 1) whose entries are known by a key of their own, or by list and rank. */
export function itemSpot(spot: Spot, itemKey: string | null, rank: number): Spot {
  return { path: joined(spot.path, rank), key: itemKey ?? joined(spot.key, rank) };
}

function joined(before: string, step: string | number): string {
  return before === '' ? `${step}` : `${before}.${step}`;
}

/** Collects what is refused in one document, so that all of it can be said at once. */
export interface Report {
  /** Remembers where a path stands in the text. */
  readonly locate: (path: string, place: Place) => void;
  /** Refuses what stands at a path, or, if nothing stands there, what should have stood below the nearest that does. */
  readonly refuse: (path: string, what: string, mend: string) => void;
  /** Refuses at a place that has no path of its own, such as an unknown key. */
  readonly refuseAt: (place: Place, path: string, what: string, mend: string) => void;
  /** All that was refused so far, from the top of the text. */
  readonly refusals: () => readonly RefusalParts[];
}

/** @throws {Refusal} if anything was refused */
export function throwIfRefused(refusals: readonly RefusalParts[]): void {
  if (refusals.length > 0) throw new Refusal(refusals);
}

/** More than this nobody mends in one go; it bounds the work on a hostile document, too. */
const mostRefusals = 100;

/** A report with nothing in it yet; `file` is how refusals call the document. */
export function reportOn(file: string): Report {
  const places = new Map<string, Place>();
  const refused: { readonly place: Place; readonly parts: RefusalParts }[] = [];
  let untold = 0;

  function refuseAt(place: Place, path: string, what: string, mend: string): void {
    if (refused.length === mostRefusals) untold += 1;
    else refused.push({ place, parts: { where: whereIs(file, place, path), what, mend } });
  }

  /** As somebody meets them who goes through the text from its top. */
  const fromTheTop = (): readonly RefusalParts[] =>
    refused
      .toSorted(({ place: a }, { place: b }) => a.line - b.line || a.column - b.column)
      .map(({ parts }) => parts);

  function nearestPlace(path: string): Place {
    for (let near = path; near !== ''; near = near.slice(0, Math.max(0, near.lastIndexOf('.')))) {
      const place = places.get(near);
      if (place !== undefined) return place;
    }
    return places.get('') ?? { line: 1, column: 1 };
  }

  return {
    locate: (path, place) => {
      places.set(path, place);
    },
    refuse: (path, what, mend) => refuseAt(nearestPlace(path), path, what, mend),
    refuseAt,
    refusals: () => (untold === 0 ? fromTheTop() : [...fromTheTop(), more(file, untold)]),
  };
}

function more(file: string, untold: number): RefusalParts {
  return {
    where: whereIs(file, { line: 1, column: 1 }, ''),
    what: `${untold} more places are refused`,
    mend: 'Mend the others first and read the document again.',
  };
}
