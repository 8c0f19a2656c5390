import { differences, placeWords, Refusal, unbroken } from '@coreward/bench';
import type { KeptVersion } from '../keeping/versions.ts';
import { fieldTexts } from '../texts/field.ts';
import { versionTexts } from '../texts/versions.ts';

/** What one version says that the other does not, in words; a part is spoken of without the list it lies in. */
export function whatDiffers(before: KeptVersion, after: KeptVersion): readonly string[] {
  const put = after.putAway ? versionTexts.put : versionTexts.back;
  const moved = before.putAway === after.putAway ? [] : [put];
  try {
    const changed = differences(before.text, after.text).map((one) =>
      unbroken(fieldTexts.what(versionTexts.place(placeWords(one.place)), one.before, one.after)),
    );
    return [...moved, ...changed];
  } catch (error) {
    if (error instanceof Refusal) return moved;
    throw error;
  }
}
