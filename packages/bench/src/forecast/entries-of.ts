import type { Launch } from '../launch/launch.ts';
import type { Entry } from '../quantity/quantity.ts';

/** Every entry of a launch that leaves a doubt, in the order of the document. */
export function doubtfulEntries(launch: Launch): readonly Entry[] {
  // the reference source says nothing of the light that is launched
  return doubtfulIn({ ...launch, reference: null });
}

/** Every entry in a part of a launch that leaves a doubt, each once. */
export function doubtfulIn(part: object | null): readonly Entry[] {
  const found: Entry[] = [];
  const visit = (node: unknown): void => {
    if (node === null || typeof node !== 'object') return;
    if (isEntry(node)) {
      if (node.uncertainty > 0 && !found.includes(node)) found.push(node);
      return;
    }
    for (const child of Object.values(node)) visit(child);
  };
  visit(part);
  return found;
}

function isEntry(node: object): node is Entry {
  return 'key' in node && 'uncertainty' in node && 'value' in node;
}
