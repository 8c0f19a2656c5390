import { differences, type Launch, placeWords, Refusal, readLaunch, unbroken } from '@coreward/bench';
import type { KeptVersion } from '../keeping/versions.ts';
import { fieldTexts } from '../texts/field.ts';
import { versionTexts } from '../texts/versions.ts';

/** What one version says that the other does not, in words; a part is spoken of without the list it lies in. */
export function whatDiffers(before: KeptVersion, after: KeptVersion): readonly string[] {
  const put = after.putAway ? versionTexts.put : versionTexts.back;
  const moved = before.putAway === after.putAway ? [] : [put];
  try {
    // a place that is there no more is told by its rank: by now another part may have it
    const way = 'kind' in after ? [] : wayOf(after.text);
    const changed = differences(before.text, after.text).map((one) =>
      unbroken(
        fieldTexts.what(
          versionTexts.place(placeWords(one.place, one.after === null ? [] : way)),
          one.before,
          one.after,
        ),
      ),
    );
    return [...moved, ...changed];
  } catch (error) {
    if (error instanceof Refusal) return moved;
    throw error;
  }
}

/** The way of a launch, for the names of its parts; empty where it cannot be read. */
function wayOf(text: string): Launch['path'] {
  try {
    return readLaunch(text, 'launch').path;
  } catch (error) {
    if (error instanceof Refusal) return [];
    throw error;
  }
}
