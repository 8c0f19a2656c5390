import { type FieldNode, type FieldPath, fieldAt } from '../document/fields.ts';
import { placeOfPath } from '../document/places.ts';
import type { LinePart } from './line-parts.ts';

/** A length of a launch document that a hand may turn. */
export interface LengthToTurn {
  readonly path: FieldPath;
  /** The key of its entry: `laser.beam.waist diameter`. */
  readonly key: string;
  /** As its user spells it: `waist diameter`. */
  readonly name: string;
  /** As it is written: `0.84 mm ± 0.05 mm`. */
  readonly text: string;
}

/** Lengths that shape the light on its way; the others are looked up, not tried. */
const shaping: readonly string[] = [
  'space',
  'focal length',
  'waist diameter',
  'waist position',
  'diameter',
  'at',
  'core diameter',
  'length',
  'defocus',
  'x',
  'y',
];

/**
 * The written lengths at a part that shape the light.
 *
 * @param root as `launchFields` gives it
 */
export function lengthsToTurn(root: FieldNode, { places }: LinePart): readonly LengthToTurn[] {
  const found: LengthToTurn[] = [];
  const visit = (node: FieldNode): void => {
    switch (node.kind) {
      case 'quantity': {
        const { dimension, written, path, key } = node;
        if (dimension === 'length' && written !== null && shaping.includes(key)) {
          found.push({ path, key: placeOfPath(path), name: key, text: written.text });
        }
        return;
      }
      case 'group':
        for (const field of node.fields) visit(field);
        return;
      case 'word':
      case 'name':
      case 'count':
      case 'list':
        return;
    }
  };
  for (const place of places) {
    const node = fieldAt(root, place);
    if (node !== null) visit(node);
  }
  return found;
}
