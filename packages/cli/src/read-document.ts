import { Refusal } from '@coreward/bench';
import type { ReadOutcome, Shell } from './shell.ts';

/** Three bytes for each of the 256 × 1024 characters a document may have; longer files are not opened. */
const mostBytes = 3 * 256 * 1024;

/** A document as text, and the name it goes by in refusals. */
export interface DocumentText {
  readonly file: string;
  readonly text: string;
}

/**
 * The text of a file, or of standard input where `path` is `-`.
 *
 * @throws {Refusal} if there is no such file, or if it is not a text in UTF-8 of a document's size
 */
export async function readDocument(path: string, shell: Shell): Promise<DocumentText> {
  if (path === '-') {
    if (shell.inputIsKeyboard)
      shell.talk('Reading from the keyboard. Ctrl-D on a line of its own ends it.\n');
    const file = 'standard input';
    return { file, text: textOf(await shell.readInput(mostBytes), file, shell) };
  }
  return { file: path, text: textOf(await shell.read(path, mostBytes), path, shell) };
}

function textOf(outcome: ReadOutcome, where: string, shell: Shell): string {
  switch (outcome.kind) {
    case 'read':
      return decoded(outcome.bytes, where, shell);
    case 'missing':
      throw new Refusal({
        where,
        what: 'there is no such file',
        mend: `Check the name and the folder. \`${shell.typed} example\` writes a launch to start from.`,
      });
    case 'folder':
      throw new Refusal({
        where,
        what: 'this is a folder',
        mend: 'Name the file in it, one ending in `.launch.yaml` for instance.',
      });
    case 'forbidden':
      throw new Refusal({
        where,
        what: 'the file may not be read by you',
        mend: 'Change its permissions, or copy it to where you may read it.',
      });
    case 'too long': {
      const size = outcome.bytes === null ? 'more' : `${(outcome.bytes / 1e6).toFixed(1)} MB, more`;
      throw new Refusal({
        where,
        what: `there is ${size} than the 256 kB that a document may have`,
        mend: 'Check that this is the file you meant.',
      });
    }
    case 'failed':
      throw new Refusal({
        where,
        what: `the file could not be read (${outcome.reason})`,
        mend: 'Copy it to a folder on this machine and try again.',
      });
  }
}

function decoded(bytes: Uint8Array, where: string, shell: Shell): string {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
    throw new Refusal({ where, what: 'the text is in UTF-16', mend: 'Save it as UTF-8.' });
  }
  if (bytes.includes(0)) {
    throw new Refusal({
      where,
      what: 'this is no text file',
      mend: `Name a launch: plain text in YAML, as \`${shell.typed} example\` writes it.`,
    });
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const before = new TextDecoder('utf-8').decode(bytes).split('\ufffd', 1)[0] ?? '';
    const line = before.split('\n').length;
    throw new Refusal({
      where: `${where}:${line}`,
      what: 'a character of this line is not UTF-8',
      mend: 'Save the file as UTF-8.',
    });
  }
}
