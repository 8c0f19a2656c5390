import { readTree, type Tree } from './yaml-tree.ts';

/** One place in which two documents differ, each side as it is written there; `null`: nothing is. */
export interface Difference {
  /** `collimator.focal length`, ranks in lists from 1. */
  readonly place: string;
  readonly before: string | null;
  readonly after: string | null;
}

/**
 * Where two documents differ, in the order of the later one; comments, order and ways of writing do not count. A bare
 * quantity and one with an origin differ in the origin only.
 *
 * @throws {Refusal} if one of them is not YAML
 */
export function differences(before: string, after: string): readonly Difference[] {
  const old = leaves(readTree(before, 'before'));
  const young = leaves(readTree(after, 'after'));
  const places = new Set([...young.keys(), ...old.keys()]);
  return [...places].flatMap((place) => {
    const sides = { before: old.get(place) ?? null, after: young.get(place) ?? null };
    return sides.before === sides.after ? [] : [{ place, ...sides }];
  });
}

function leaves(tree: Tree): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const walk = (node: Tree, place: string): void => {
    const under = (step: string | number): string => (place === '' ? `${step}` : `${place}.${step}`);
    switch (node.kind) {
      case 'text':
        found.set(place, node.text);
        return;
      case 'nothing':
        return;
      case 'list':
        node.items.forEach((item, index) => {
          walk(item, under(index + 1));
        });
        return;
      case 'map':
        for (const { key, value } of node.entries) walk(value, key === 'value' ? place : under(key));
    }
  };
  walk(tree, '');
  return found;
}
