import { Refusal } from '@coreward/bench';
import type { ReadOutcome, Shell } from './shell.ts';
import { writeNew } from './write-new.ts';

/** No session in a shell is longer than so many bytes. */
const mostBytes = 8 * 1024 * 1024;

/** A session in a shell, kept in a file of its own: a line when it began, and one for everything that was done in it. */
export interface KeptFile {
  /** What was done in it before, and the lines of the file that say so, the beginning's being 1. */
  readonly before: readonly { readonly line: number; readonly text: string }[];
  /** One thing more; on the disk when it resolves. */
  readonly add: (text: string) => Promise<void>;
}

/** Nothing is kept. */
export const notKept: KeptFile = { before: [], add: async () => {} };

/**
 * Opens such a file, or begins it.
 *
 * @param begun what the session is of, in one line: one of something else is not gone on with
 * @throws {Refusal} if the file is of something else, or cannot be read or written
 */
export async function keptFile(path: string, begun: string, shell: Shell): Promise<KeptFile> {
  const add = async (text: string): Promise<void> => {
    const failed = await shell.append(path, `${text}\n`);
    if (failed === null) return;
    throw new Refusal({
      where: path,
      what: `it could not be written (${failed})`,
      mend: 'Make room for it, and go on by the same command: what was done before is in it.',
    });
  };
  const outcome = await shell.read(path, mostBytes);
  if (outcome.kind === 'missing') {
    await writeNew(path, `${begun}\n`, '--keep FILE', shell);
    return { before: [], add };
  }
  const [first, ...lines] = linesOf(outcome, path);
  if (first !== begun) throw ofSomethingElse(path);
  return { before: lines.map((text, at) => ({ line: at + 2, text })), add };
}

function linesOf(outcome: ReadOutcome, path: string): readonly string[] {
  if (outcome.kind !== 'read') {
    throw new Refusal({
      where: path,
      what: 'it is no file that could be read',
      mend: 'Name another file, or one that is not there yet.',
    });
  }
  const text = new TextDecoder().decode(outcome.bytes);
  const lines = text.split('\n');
  const last = lines.pop();
  if (last === '') return lines;
  throw notOfIt(path, lines.length + 1, 'it was cut off');
}

/** That a line of such a file cannot be gone on from. */
export const notOfIt = (path: string, line: number, what: string): Refusal =>
  new Refusal({
    where: `${path}:${line}`,
    what,
    mend: 'Delete this line and all behind it to go on from what was done before, or name a file that is not there yet.',
  });

const ofSomethingElse = (path: string): Refusal =>
  new Refusal({
    where: path,
    what: 'it keeps something else: another launch, this one as it was before a change, or begun with other options',
    mend: 'Name a file that is not there yet, and begin anew.',
  });
