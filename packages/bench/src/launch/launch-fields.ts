import { type FieldNode, fieldsOf } from '../document/fields.ts';
import { readTree } from '../document/yaml-tree.ts';
import { launchForm } from './launch-form.ts';

/**
 * What may be filled in for a launch, and what is written.
 *
 * @throws {Refusal} if the text is not YAML
 */
export function launchFields(text: string): FieldNode {
  return fieldsOf(launchForm, readTree(text, 'launch'), {
    path: [],
    key: 'launch',
    about: '',
    leftOut: { kind: 'required' },
  });
}
