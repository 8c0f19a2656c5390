import { readQuantity } from '../units/read-quantity.ts';
import { writeValue } from '../units/write.ts';

/** A length as it was typed beside a card. */
export type OffsetRead =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly what: string; readonly mend: string };

/** No card is wider to either side, m (our choice). */
const widestCard = 0.2;

/** An offset as typed; a bare number is in millimetres, for the field says so. */
export function readOffset(text: string): OffsetRead {
  const bare = /^[-−+]?\d*[.,]?\d+$/u.test(text.trim());
  const read = readQuantity(bare ? `${text.trim()} mm` : text, 'length');
  if (!read.ok) return { ok: false, what: read.what, mend: read.mend };
  if (Math.abs(read.value) > widestCard) {
    return {
      ok: false,
      what: `\`${text.trim()}\` is more than a card is wide`,
      mend: 'Write millimetres, such as `-1.2`.',
    };
  }
  return { ok: true, value: read.value };
}

/** A distance along the beam as typed; a bare number is in millimetres. */
export function readDistance(text: string, least: number, most: number): OffsetRead {
  const bare = /^\d*[.,]?\d+$/u.test(text.trim());
  const read = readQuantity(bare ? `${text.trim()} mm` : text, 'length');
  if (!read.ok) return { ok: false, what: read.what, mend: read.mend };
  if (read.value < least || read.value > most) {
    return {
      ok: false,
      what: `\`${text.trim()}\` is not between ${inMillimetres(least)} and ${inMillimetres(most)}`,
      mend: 'Write a length between them.',
    };
  }
  return { ok: true, value: read.value };
}

const inMillimetres = (length: number): string => writeValue(length, 'length', 3, 'mm');

/** A reading error as typed: at least what nobody does better, at most what is no reading any more. */
export const readReadingError = (text: string): OffsetRead => readDistance(text, 1e-6, 5e-3);

/** A length as a field shows it, to be read back: `50 mm`. */
export const fieldText = (length: number): string => writeValue(length, 'length', 3, 'mm');
