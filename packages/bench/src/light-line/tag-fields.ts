import {
  type FieldNode,
  type FieldPath,
  fieldAt,
  type ListField,
  type QuantityField,
  type TextField,
  type WordField,
} from '../document/fields.ts';
import { placeOfPath } from '../drawer/part.ts';
import type { Launch } from '../launch/launch.ts';
import type { Entry } from '../quantity/quantity.ts';
import { writeQuantity } from '../units/write.ts';

/** One thing that may be filled in at a part. */
export interface TagField {
  /** The groups it lies in below the part: `beam`, `mount`; empty: none. */
  readonly group: string;
  readonly field: QuantityField | WordField | TextField;
  /** The key of its entry: `laser.beam.waist diameter`. */
  readonly key: string;
  /** What is computed with, doubt included: `91.0 % within 8.0 %`; null where that is no quantity or not known. */
  readonly stands: string | null;
}

/** A list at a part that may take one more, and the places of what is in it. */
export interface TagList {
  readonly group: string;
  readonly list: ListField;
}

/** What a part's tag shows. */
export interface TagFields {
  readonly written: readonly TagField[];
  /** What is left to its default, or out. */
  readonly unwritten: readonly TagField[];
  readonly lists: readonly TagList[];
}

/**
 * The fields at some places of a launch document, those that are written first.
 *
 * @param root as `launchFields` gives it
 * @param launch the same document read; null where it is refused
 */
export function tagFields(root: FieldNode, places: readonly FieldPath[], launch: Launch | null): TagFields {
  const entries = launch === null ? new Map<string, Entry>() : entriesByKey(launch);
  const written: TagField[] = [];
  const unwritten: TagField[] = [];
  const lists: TagList[] = [];
  const put = (field: TagField['field'], group: string): void => {
    const key = placeOfPath(field.path);
    const entry = entries.get(key);
    const stands =
      field.kind === 'quantity' && entry !== undefined ? writeQuantity(entry, field.dimension) : null;
    (field.written === null ? unwritten : written).push({ group, field, key, stands });
  };
  const visit = (node: FieldNode, group: string): void => {
    switch (node.kind) {
      case 'quantity':
      case 'word':
      case 'name':
      case 'count':
        put(node, group);
        return;
      case 'list':
        lists.push({ group: joined(group, node.key), list: node });
        for (const item of node.items) visit(item, joined(group, `${node.key} ${item.key}`));
        return;
      case 'group': {
        const variant = node.variants?.[node.variant];
        const others = new Set(node.variants?.flatMap(({ needs, allows }) => [...needs, ...allows]));
        for (const field of node.fields) {
          const goes =
            variant === undefined ||
            !others.has(field.key) ||
            variant.needs.includes(field.key) ||
            variant.allows.includes(field.key);
          const isLeaf = field.kind !== 'group' && field.kind !== 'list';
          if (goes) visit(field, isLeaf || field.kind === 'list' ? group : joined(group, field.key));
        }
      }
    }
  };
  for (const place of places) {
    const node = fieldAt(root, place);
    if (node !== null) visit(node, '');
  }
  return { written, unwritten, lists };
}

const joined = (group: string, key: string): string => (group === '' ? key : `${group}, ${key}`);

function entriesByKey(launch: Launch): Map<string, Entry> {
  const found = new Map<string, Entry>();
  const visit = (node: unknown): void => {
    if (node === null || typeof node !== 'object') return;
    if (isEntry(node)) found.set(node.key, node);
    else for (const child of Object.values(node)) visit(child);
  };
  visit(launch);
  return found;
}

const isEntry = (node: object): node is Entry => 'key' in node && 'uncertainty' in node && 'value' in node;
