import { Refusal } from '../refusal.ts';

/**
 * A file of readings as text, in UTF-8, or as older spreadsheets write it.
 *
 * @param decode turns bytes into text, and throws where they are none in that encoding
 * @throws {Refusal} if it is no text
 */
export function textOfBytes(
  bytes: Uint8Array,
  where: string,
  decode: (bytes: Uint8Array, encoding: 'utf-8' | 'windows-1252') => string,
): string {
  if (bytes.includes(0)) {
    throw new Refusal({
      where,
      what: 'this is neither a text nor a picture that is known here',
      mend: 'Give a table as plain text, a PNG, a JPEG or JSON.',
    });
  }
  try {
    return decode(bytes, 'utf-8');
  } catch {
    // a spreadsheet's µ and ± in one byte each
    return decode(bytes, 'windows-1252');
  }
}
