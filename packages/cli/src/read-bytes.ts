import { Refusal } from '@coreward/bench';
import type { ReadOutcome, Shell } from './shell.ts';

/** Readings and pictures: room for 24 megapixels of 16 bits, packed or not. */
const mostBytes = 64 * 1024 * 1024;

/** A file's bytes and the name it goes by in refusals. */
export interface FileBytes {
  readonly file: string;
  readonly bytes: Uint8Array;
}

/**
 * The bytes of a file of readings, or of standard input where `path` is `-`.
 *
 * @throws {Refusal} if there is no such file, or it cannot be read, or is too long
 */
export async function readBytes(path: string, shell: Shell): Promise<FileBytes> {
  const file = path === '-' ? 'standard input' : path;
  const outcome = path === '-' ? await shell.readInput(mostBytes) : await shell.read(path, mostBytes);
  if (outcome.kind === 'read') return { file, bytes: outcome.bytes };
  throw new Refusal({ where: file, ...troubleWith(outcome) });
}

function troubleWith(outcome: Exclude<ReadOutcome, { kind: 'read' }>): { what: string; mend: string } {
  switch (outcome.kind) {
    case 'missing':
      return { what: 'there is no such file', mend: 'Check the name and the folder.' };
    case 'folder':
      return { what: 'this is a folder', mend: 'Name the file in it.' };
    case 'forbidden':
      return {
        what: 'the file may not be read by you',
        mend: 'Change its permissions, or copy it to where you may read it.',
      };
    case 'too long':
      return { what: 'there is more than the 64 MB that are read', mend: 'Crop the picture to the spot.' };
    case 'failed':
      return {
        what: `the file could not be read (${outcome.reason})`,
        mend: 'Copy it to a folder on this machine and try again.',
      };
  }
}
