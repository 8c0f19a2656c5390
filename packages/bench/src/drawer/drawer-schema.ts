import { groupsOf, keyTables } from '../document/key-table.ts';
import { type Schema, schemaOf } from '../document/schema.ts';
import { launchForm } from '../launch/launch-form.ts';
import { drawerForm } from './drawer-form.ts';

/** The JSON Schema (2020-12) of a drawer document. */
export function drawerSchema(): Schema {
  return schemaOf(drawerForm, 'Coreward drawer');
}

/** The keys of a drawer document that a launch document does not have, as Markdown tables. */
export function drawerKeyTables(): string {
  return keyTables(drawerForm, groupsOf(launchForm));
}
