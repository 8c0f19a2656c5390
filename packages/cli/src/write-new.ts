import { Refusal, type RefusalParts } from '@coreward/bench';
import type { Shell } from './shell.ts';

/** `file` in a folder, as one would type it. */
export function inFolder(folder: string, file: string): string {
  if (folder === '.') return file;
  return folder.endsWith('/') ? `${folder}${file}` : `${folder}/${file}`;
}

/**
 * Makes sure that nothing stands in the way, before anything is written.
 *
 * @param elsewhere what to type to write it elsewhere: `coreward example FOLDER`
 * @throws {Refusal} with each that is taken
 */
export async function mustBeFree(paths: readonly string[], elsewhere: string, shell: Shell): Promise<void> {
  const taken: RefusalParts[] = [];
  for (const path of paths) if (await shell.isTaken(path)) taken.push(occupied(path, elsewhere));
  if (taken.length > 0) throw new Refusal(taken);
}

const occupied = (where: string, elsewhere: string): RefusalParts => ({
  where,
  what: 'there is such a file already, and it is not overwritten',
  mend: `Move it away, or name another folder: \`${elsewhere}\`.`,
});

/**
 * Writes a new file, with the folders it needs.
 *
 * @throws {Refusal} if that cannot be done
 */
export async function writeNew(path: string, text: string, elsewhere: string, shell: Shell): Promise<void> {
  const outcome = await shell.create(path, text);
  switch (outcome.kind) {
    case 'created':
      return;
    case 'exists':
      throw new Refusal(occupied(path, elsewhere));
    case 'forbidden':
      throw new Refusal({
        where: path,
        what: 'you may not write there',
        mend: `Name a folder of your own: \`${elsewhere}\`.`,
      });
    case 'no folder':
      throw new Refusal({
        where: path,
        what: 'a file stands where the folder should be',
        mend: `Name another folder: \`${elsewhere}\`.`,
      });
    case 'full':
      throw new Refusal({
        where: path,
        what: 'the disk is full, and this file was not written',
        mend: `Make room on it, or name a folder on another one: \`${elsewhere}\`.`,
      });
    case 'failed':
      throw new Refusal({
        where: path,
        what: `it could not be written (${outcome.reason})`,
        mend: `Name another folder: \`${elsewhere}\`.`,
      });
  }
}
