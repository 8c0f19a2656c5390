import { keyTables } from '../document/key-table.ts';
import { type Schema, schemaOf } from '../document/schema.ts';
import { launchForm } from './launch-form.ts';

/** The JSON Schema (2020-12) of a launch document. */
export function launchSchema(): Schema {
  return schemaOf(launchForm, 'Coreward launch');
}

/** Every key of a launch document as Markdown tables. */
export function launchKeyTables(): string {
  return keyTables(launchForm);
}
