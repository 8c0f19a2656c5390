import { OutOfRange } from '@coreward/optics';
import { Refusal } from '../refusal.ts';

/** What came out, or why nothing could: a light or a lens that the formulas do not cover. */
export type WithinRange<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly why: string };

/** Works something out for a page that must say so where nothing can be said; other errors pass. */
export function withinRange<T>(work: () => T): WithinRange<T> {
  try {
    return { ok: true, value: work() };
  } catch (error) {
    if (error instanceof OutOfRange || error instanceof Refusal) return { ok: false, why: error.message };
    throw error;
  }
}
