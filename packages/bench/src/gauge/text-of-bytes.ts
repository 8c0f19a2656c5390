import { Refusal } from '../refusal.ts';
import { pictureFormat } from './picture-of.ts';

/**
 * A file of readings as text, in UTF-8, or as older spreadsheets write it.
 *
 * @param decode turns bytes into text, and throws where they are none in that encoding
 * @throws {Refusal} if it is no text, or there is none in it
 */
export function textOfBytes(
  bytes: Uint8Array,
  where: string,
  decode: (bytes: Uint8Array, encoding: 'utf-8' | 'windows-1252') => string,
): string {
  if (pictureFormat(bytes) !== null) {
    throw new Refusal({
      where,
      what: 'this is a picture, and readings are asked for here',
      mend: 'Give a table as plain text, or JSON.',
    });
  }
  if (bytes.includes(0)) {
    throw new Refusal({
      where,
      what: 'this is neither a text nor a picture that is known here',
      mend: 'Give a table as plain text, a PNG, a JPEG or JSON.',
    });
  }
  const text = decoded(bytes, decode);
  if (text.trim() !== '') return text;
  throw new Refusal({
    where,
    what: 'there are no readings in it: it is empty',
    mend: 'Write a row of headings with units, and the readings under it.',
  });
}

function decoded(bytes: Uint8Array, decode: Parameters<typeof textOfBytes>[2]): string {
  try {
    return decode(bytes, 'utf-8');
  } catch {
    // a spreadsheet's µ and ± in one byte each
    return decode(bytes, 'windows-1252');
  }
}
