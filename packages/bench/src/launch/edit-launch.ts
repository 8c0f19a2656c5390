import type { FieldPath } from '../document/fields.ts';
import { placeOfPath, placesRefused, type RefusedPlace } from '../document/places.ts';
import { setInText } from '../document/set-in-text.ts';
import type { Written } from '../document/write-tree.ts';
import { Refusal } from '../refusal.ts';
import type { Launch } from './launch.ts';
import { readLaunch } from './read-launch.ts';

/** A launch document after a change: what it is now, or why it cannot be so. */
export type Edited =
  | { readonly ok: true; readonly text: string; readonly launch: Launch }
  | {
      readonly ok: false;
      /** Refused at the changed place or within it, or, where there is nothing, at another that the change upsets. */
      readonly refused: readonly RefusedPlace[];
    };

/**
 * A launch document with one place changed; comments, order and the writing of all else stay.
 *
 * @param text a launch document that `readLaunch` takes
 * @param value `null` takes the place out
 */
export function editLaunch(text: string, path: FieldPath, value: Written | null): Edited {
  const changed = setInText(text, path, value);
  try {
    return { ok: true, text: changed, launch: readLaunch(changed, 'launch') };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const refused = placesRefused(error);
    const place = placeOfPath(path);
    const here = refused.filter((each) => each.place === place || each.place.startsWith(`${place}.`));
    return { ok: false, refused: here.length > 0 ? here : refused };
  }
}
