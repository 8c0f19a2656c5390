import { type FieldNode, placeOfPath } from '@coreward/bench';
import { drawerTexts } from '../texts/drawer.ts';

/** Places among these at which nothing is written that could do, each group told by what would. */
export function emptyAt(node: FieldNode, places: readonly string[]): readonly FieldNode[] {
  const children = node.kind === 'group' ? node.fields : node.kind === 'list' ? node.items : [];
  const inner = children.flatMap((child) => emptyAt(child, places));
  return isEmpty(node) && places.includes(placeOfPath(node.path)) ? [node, ...inner] : inner;
}

function isEmpty(node: FieldNode): boolean {
  if (node.kind === 'list') return false;
  if (node.kind !== 'group') return node.written === null;
  const { variants, fields, written } = node;
  if (written === 'nothing') return true;
  const telling = new Set(variants?.flatMap(({ needs }) => needs));
  return variants !== null && fields.every((field) => !telling.has(field.key) || isEmpty(field));
}

/** "type or core diameter with numerical aperture". */
export function neededText(node: FieldNode): string {
  const variants = node.kind === 'group' ? node.variants : null;
  if (variants === null) return node.key;
  return variants.map(({ needs }) => needs.join(drawerTexts.with)).join(drawerTexts.or);
}
