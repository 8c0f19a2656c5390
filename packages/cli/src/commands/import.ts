import { Refusal } from '@coreward/bench';
import type { Command } from 'commander';
import { dataFolderOf } from '../data-folder.ts';
import type { Shell } from '../shell.ts';
import { inFolder } from '../write-new.ts';

/** Bytes of one file of an export; more could not be held. */
const mostBytes = 512 * 1024 * 1024;

/** `coreward import WHERE [--data DIR]` */
export function addImport(program: Command, shell: Shell): void {
  program
    .command('import')
    .summary('take in what `coreward export` wrote')
    .description(
      'Adds everything of an export to the bench book, or nothing if some of it contradicts what is there. ' +
        'What is there already stays. No station may have the book open.',
    )
    .argument('<where>', 'the folder or the .json file that was exported')
    .option('--data <folder>', 'where the bench book lies; otherwise in your own data folder')
    .action(async (where: string, { data }: { readonly data?: string }) => {
      const { archiveFrom, archiveIn, BenchBook, importBook } = await import('@coreward/station');
      const archive = where.endsWith('.json')
        ? archiveFrom(await textOf(where, shell), where)
        : await archiveIn((path) => textOf(inFolder(where, path), shell));
      const book = new BenchBook(await dataFolderOf(data, shell.machine), shell.machine);
      try {
        const { documents, versions, entries, readings, known } = importBook(book, archive);
        shell.print(
          `Taken in: ${versions} versions of ${documents} documents, ${entries} entries, ${readings} readings. Known already: ${known}.\n`,
        );
      } finally {
        book.close();
      }
    });
}

async function textOf(path: string, shell: Shell): Promise<string> {
  const outcome = await shell.read(path, mostBytes);
  if (outcome.kind !== 'read') {
    throw new Refusal({
      where: path,
      what: outcome.kind === 'missing' ? 'there is no such file' : 'this cannot be read',
      mend: 'Name the folder or the .json file that `coreward export` wrote.',
    });
  }
  try {
    // a mark of UTF-8 at the beginning belongs to the text, which is kept to the last character
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(outcome.bytes);
  } catch {
    throw new Refusal({
      where: path,
      what: 'this is not UTF-8',
      mend: 'Import the export as it was written.',
    });
  }
}
