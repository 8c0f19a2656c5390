import { drawerSchema, launchSchema } from '@coreward/bench';
import { Argument, type Command } from 'commander';
import type { Shell } from '../shell.ts';

/** `coreward schema [launch|drawer]` */
export function addSchema(program: Command, shell: Shell): void {
  program
    .command('schema')
    .summary('print the JSON Schema of a document')
    .description(
      'Prints the JSON Schema (2020-12) of a launch document or a drawer document, for editors and scripts.',
    )
    .addArgument(new Argument('[document]', 'which document').choices(['launch', 'drawer']).default('launch'))
    .action((document: 'launch' | 'drawer') => {
      const schema = document === 'launch' ? launchSchema() : drawerSchema();
      shell.print(`${JSON.stringify(schema, null, 2)}\n`);
    });
}
