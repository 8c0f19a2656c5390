import { Refusal } from '../refusal.ts';
import { type KeptPart, listOf, partKinds } from './part.ts';
import { readDrawer } from './read-drawer.ts';

/**
 * A drawer document that has exactly one part in it, and nothing else; and the part's name.
 *
 * @throws {Refusal} if it cannot be read, or has another number of parts, or a path
 */
export function readSinglePart(text: string, file: string): KeptPart & { readonly name: string } {
  const drawer = readDrawer([{ text, file }]);
  const parts = partKinds.flatMap((kind) => drawer[listOf[kind]].map(({ name }) => ({ kind, name, text })));
  const [part] = parts;
  if (part === undefined || parts.length > 1) {
    const what = part === undefined ? 'there is no part in it' : `there are ${parts.length} parts in it`;
    throw new Refusal({ where: file, what, mend: 'Write one part into it, and every other into its own.' });
  }
  if (drawer.path.length > 0) {
    throw new Refusal({
      where: `${file} path`,
      what: 'a path is no part',
      mend: 'Take `path` out; it stands in the settings of the bench book.',
    });
  }
  return part;
}
