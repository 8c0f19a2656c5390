import { differences, listOf, Refusal } from '@coreward/bench';
import type { KeptVersion } from '../keeping/versions.ts';
import { fieldTexts } from '../texts/field.ts';
import { versionTexts } from '../texts/versions.ts';

/** What one version says that the other does not, in words; a part is spoken of without the list it lies in. */
export function whatDiffers(before: KeptVersion, after: KeptVersion): readonly string[] {
  const inside = 'kind' in after ? `${listOf[after.kind]}.1.` : '';
  const put = after.putAway ? versionTexts.put : versionTexts.back;
  const moved = before.putAway === after.putAway ? [] : [put];
  try {
    const changed = differences(before.text, after.text).map((one) => {
      const place = one.place.startsWith(inside) ? one.place.slice(inside.length) : one.place;
      return fieldTexts.what(place.replaceAll('.', ' '), one.before, one.after);
    });
    return [...moved, ...changed];
  } catch (error) {
    if (error instanceof Refusal) return moved;
    throw error;
  }
}
