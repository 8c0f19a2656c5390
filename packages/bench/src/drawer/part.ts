import { behind, nothing } from '../document/behind.ts';
import { type Written, writeTree } from '../document/write-tree.ts';
import { readTree, type Tree } from '../document/yaml-tree.ts';
import { documentVersion } from '../launch/launch-form.ts';

/** The lists of a drawer, each by the kind of part that lies in it. */
export const listOf = {
  laser: 'lasers',
  collimator: 'collimators',
  fibre: 'fibres',
  mirror: 'mirrors',
  detector: 'detectors',
  reference: 'references',
} as const;

export type PartKind = keyof typeof listOf;
/** In the order in which light meets them. */
export const partKinds = Object.keys(listOf) as readonly PartKind[];

/** A part as it is kept: a drawer document with one part of this kind in it, and nothing else. */
export interface KeptPart {
  readonly kind: PartKind;
  readonly text: string;
}

/** A part with nothing but the keys that are given. */
export function newPart(kind: PartKind, keys: { readonly [key: string]: Written | null }): KeptPart {
  return { kind, text: writeTree({ coreward: documentVersion, [listOf[kind]]: [keys] }) };
}

/**
 * A part's keys as they are written, to stand in a launch.
 *
 * @throws {Refusal} if the text is not YAML
 */
export function writtenPart(part: KeptPart): Written {
  return written(keysOf(part));
}

/**
 * A way as it is written, to stand in a launch.
 *
 * @param way as in `drawerOfParts`
 * @throws {Refusal} if the text is not YAML
 */
export function writtenWay(way: string): Written {
  return written(behind(readTree(way, 'drawer'), 'path'));
}

/** A drawer document taken apart: each of its parts as a document of its own. The path is left. */
export function partsIn(text: string): readonly KeptPart[] {
  const tree = readTree(text, 'drawer');
  return partKinds.flatMap((kind) => {
    const list = behind(tree, listOf[kind]);
    const items = list.kind === 'list' ? list.items : [];
    return items.map((item) => ({
      kind,
      text: writeTree({ coreward: documentVersion, [listOf[kind]]: [written(item)] }),
    }));
  });
}

/**
 * The path of a launch or a drawer, as a drawer document of its own; `null` where it has none.
 *
 * @throws {Refusal} if the text is not YAML
 */
export function wayIn(text: string): string | null {
  const path = behind(readTree(text, 'launch'), 'path');
  if (path.kind !== 'list' || path.items.length === 0) return null;
  return writeTree({ coreward: documentVersion, path: written(path) });
}

/** The keys of the one part in its document as they are written; nothing where there is none. */
export function keysOf({ kind, text }: KeptPart): Tree {
  const list = behind(readTree(text, 'drawer'), listOf[kind]);
  return (list.kind === 'list' ? list.items[0] : undefined) ?? nothing;
}

/** A tree as it may be written again; an empty place is left empty. */
function written(tree: Tree): Written {
  switch (tree.kind) {
    case 'text':
      return tree.text;
    case 'nothing':
      return '';
    case 'list':
      return tree.items.map(written);
    case 'map':
      return Object.fromEntries(tree.entries.map(({ key, value }) => [key, written(value)]));
  }
}
