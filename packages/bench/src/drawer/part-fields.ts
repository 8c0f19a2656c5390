import { behind } from '../document/behind.ts';
import { type FieldNode, fieldsOf } from '../document/fields.ts';
import { readTree } from '../document/yaml-tree.ts';
import { drawerForm } from './drawer-form.ts';
import { type KeptPart, keysOf, listOf } from './part.ts';

/**
 * What may be filled in for a part, and what is written; paths begin at the document.
 *
 * @throws {Refusal} if the text is not YAML
 */
export function partFields({ kind, text }: KeptPart): FieldNode {
  const { item } = drawerForm.keys[listOf[kind]].form;
  return fieldsOf(item, keysOf({ kind, text }), {
    path: [listOf[kind], 0],
    key: kind,
    about: '',
    leftOut: { kind: 'required' },
  });
}

/**
 * What may be filled in for the way from any laser to any collimator, and what is written.
 *
 * @param way as in `drawerOfParts`
 * @throws {Refusal} if the text is not YAML
 */
export function wayFields(way: string): FieldNode {
  const { form, about, presence } = drawerForm.keys.path;
  return fieldsOf(form, behind(readTree(way, 'drawer'), 'path'), {
    path: ['path'],
    key: 'path',
    about,
    leftOut: presence,
  });
}
