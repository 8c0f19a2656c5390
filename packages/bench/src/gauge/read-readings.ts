import { type InputsRead, readInputs } from './read-inputs.ts';
import { readTable } from './read-table.ts';

/**
 * Readings as somebody gives them: JSON where the text begins as JSON does, else a table.
 *
 * @param file its name, for refusals
 * @throws {Refusal} as `readTable` and `readInputs` do
 */
export function readReadings(text: string, file: string): InputsRead {
  if (isJson(text)) return readInputs(text, file);
  return { ...readTable(text, file), pictureFile: null, kind: null };
}

/** Whether a text begins as JSON does. */
export const isJson = (text: string): boolean => /^\uFEFF?\s*[{[]/u.test(text);
