import type { Tree } from './yaml-tree.ts';

/** An empty place. */
export const nothing: Tree = { kind: 'nothing', at: { line: 1, column: 1 } };

/** What stands behind a key. */
export function behind(tree: Tree, key: string): Tree {
  return tree.kind === 'map' ? (tree.entries.find((entry) => entry.key === key)?.value ?? nothing) : nothing;
}
