import type { Command } from 'commander';
import { lookingInto } from '../data-folder.ts';
import type { Shell } from '../shell.ts';
import { inFolder, mustBeFree, writeNew } from '../write-new.ts';

/** `coreward export [WHERE] [--data DIR]` */
export function addExport(program: Command, shell: Shell): void {
  program
    .command('export')
    .summary('write everything in the bench book as plain files')
    .description(
      'Writes every launch and part with every earlier version, every entry, every reading and the settings. Into a folder it writes ' +
        'YAML files, a table (CSV) and an index (JSON); into a file that ends in .json, one JSON document.',
    )
    .argument('[where]', 'a new folder, or a new file ending in .json; left out: JSON on standard output')
    .option('--data <folder>', 'where the bench book lies; otherwise in your own data folder')
    .action(async (where: string | undefined, { data }: { readonly data?: string }) => {
      const { archiveFiles, exportBook } = await import('@coreward/station');
      const archive = await lookingInto(data, shell, exportBook);
      const elsewhere = `${shell.typed} export WHERE`;
      const json = () => `${JSON.stringify(archive, null, 2)}\n`;
      if (where === undefined) {
        shell.print(json());
        return;
      }
      const files = where.endsWith('.json')
        ? new Map([[where, json()]])
        : new Map([...archiveFiles(archive)].map(([path, text]) => [inFolder(where, path), text]));
      await mustBeFree([...files.keys()], elsewhere, shell);
      for (const [path, text] of files) await writeNew(path, text, elsewhere, shell);
      const { documents, entries, instruments = [] } = archive;
      const versions = documents.reduce((sum, document) => sum + document.versions.length, 0);
      const readings = instruments.reduce((sum, instrument) => sum + instrument.readings.length, 0);
      shell.print(
        `Written into ${where}: ${documents.length} documents in ${versions} versions, ${entries.length} entries, ${readings} readings.\n`,
      );
    });
}
