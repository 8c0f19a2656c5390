import { Refusal } from '@coreward/bench';
import type { BenchBook } from '@coreward/station';
import type { Machine, Shell } from './shell.ts';

/** The folder that was named, or the usual one of this user. */
export async function dataFolderOf(named: string | undefined, machine: Machine): Promise<string> {
  const { dataFolder } = await import('@coreward/station');
  return named ?? dataFolder(machine);
}

/**
 * Looks into a bench book that is there, beside a running station if there is one, and closes it.
 *
 * @throws {Refusal} if there is none, or if it cannot be opened
 */
export async function lookingInto<T>(
  named: string | undefined,
  shell: Shell,
  look: (book: BenchBook) => T | Promise<T>,
): Promise<T> {
  const { BenchBook, bookFile } = await import('@coreward/station');
  const folder = await dataFolderOf(named, shell.machine);
  if (!(await shell.isTaken(bookFile(folder)))) {
    throw new Refusal({
      where: folder,
      what: 'there is no bench book here',
      mend: `Name the folder it lies in with \`--data\`; \`${shell.typed}\` begins a new one.`,
    });
  }
  const book = new BenchBook(folder, shell.machine, { shared: true });
  try {
    return await look(book);
  } finally {
    book.close();
  }
}
