import { Refusal } from '../refusal.ts';
import { type Place, whereIs } from './place.ts';
import { readTree, type Tree } from './yaml-tree.ts';

/**
 * What `work` gives. A refusal that names only a key, because nothing was at hand but the launch, gets the line and
 * column of that key in the document the launch came from, or of the nearest part above it that is written.
 *
 * @param text a document that was read without refusal
 */
export function located<T>(
  { text, file }: { readonly text: string; readonly file: string },
  work: () => T,
): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const tree = readTree(text, file);
    throw new Refusal(
      error.parts.map((part) => ({ ...part, where: whereIs(file, placeOf(tree, part.where), part.where) })),
    );
  }
}

function placeOf(tree: Tree, key: string): Place {
  let here = tree;
  for (const step of key.split('.')) {
    const next = stepInto(here, step);
    if (next === undefined) break;
    here = next;
  }
  return here.at;
}

/** Lists are counted from 1, as in refusals. */
function stepInto(tree: Tree, step: string): Tree | undefined {
  switch (tree.kind) {
    case 'map':
      return tree.entries.find(({ key }) => key === step)?.value;
    case 'list':
      return /^\d+$/u.test(step) ? tree.items[Number(step) - 1] : undefined;
    case 'text':
    case 'nothing':
      return undefined;
  }
}
