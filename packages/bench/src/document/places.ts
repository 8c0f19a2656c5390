import type { Refusal, RefusalParts } from '../refusal.ts';
import type { FieldPath } from './fields.ts';

/** One thing that is refused, and the place it concerns: `lasers.1.beam.diameter`, ranks in lists from 1; empty: the whole. */
export interface RefusedPlace {
  readonly place: string;
  readonly what: string;
  readonly mend: string;
}

/** What a refusal says, by the places in the document. */
export function placesRefused({ parts }: Refusal): readonly RefusedPlace[] {
  return parts.map(({ where, what, mend }: RefusalParts) => ({
    place: /:\d+:\d+ (.*)$/u.exec(where)?.[1] ?? '',
    what,
    mend,
  }));
}

/** How a refusal spells a path: `bends.1.radius`. */
export const placeOfPath = (path: FieldPath): string =>
  path.map((step) => (typeof step === 'number' ? `${step + 1}` : step)).join('.');
