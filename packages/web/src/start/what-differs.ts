import { differences, Refusal } from '@coreward/bench';
import { fieldTexts } from '../texts/field.ts';

/** What one text says that the other does not, in words. */
export function whatDiffers(before: string, after: string): readonly string[] {
  try {
    return differences(before, after).map((one) =>
      fieldTexts.what(one.place.replaceAll('.', ' '), one.before, one.after),
    );
  } catch (error) {
    if (error instanceof Refusal) return [];
    throw error;
  }
}
