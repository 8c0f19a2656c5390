import { Refusal, type RefusalParts } from '@coreward/bench';
import type { ReadOutcome, Shell } from './shell.ts';

/** Three bytes for each of the 256 × 1024 characters a document may have; longer files are not opened. */
const mostBytes = 3 * 256 * 1024;

/** A document as text, and the name it goes by in refusals. */
export interface DocumentText {
  readonly file: string;
  readonly text: string;
}

/** What a file should have been, in refusals. */
export type DocumentKind = 'launch' | 'drawer';

/**
 * The texts of several documents.
 *
 * @throws {Refusal} with everything that is amiss with any of them
 */
export async function readDocuments(
  paths: readonly string[],
  kind: DocumentKind,
  shell: Shell,
): Promise<readonly DocumentText[]> {
  const texts: DocumentText[] = [];
  const refusals: RefusalParts[] = [];
  for (const path of paths) {
    try {
      texts.push(await readDocument(path, shell, kind));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      refusals.push(...error.parts);
    }
  }
  if (refusals.length > 0) throw new Refusal(refusals);
  return texts;
}

/**
 * The text of a file, or of standard input where `path` is `-`.
 *
 * @throws {Refusal} if there is no such file, or if it is not a text in UTF-8 of a document's size
 */
export async function readDocument(
  path: string,
  shell: Shell,
  kind: DocumentKind = 'launch',
): Promise<DocumentText> {
  if (path === '-') {
    if (shell.inputIsKeyboard)
      shell.talk('Reading from the keyboard. Ctrl-D on a line of its own ends it.\n');
    const file = 'standard input';
    return { file, text: textOf(await shell.readInput(mostBytes), file, kind, shell) };
  }
  return { file: path, text: textOf(await shell.read(path, mostBytes), path, kind, shell) };
}

function textOf(outcome: ReadOutcome, where: string, kind: DocumentKind, shell: Shell): string {
  switch (outcome.kind) {
    case 'read':
      return decoded(outcome.bytes, where, kind, shell);
    case 'missing':
      throw new Refusal({
        where,
        what: 'there is no such file',
        mend: `Check the name and the folder. \`${shell.typed} example\` writes a ${kind} to start from.`,
      });
    case 'folder':
      throw new Refusal({
        where,
        what: 'this is a folder',
        mend: `Name the file in it, one ending in \`.${kind}.yaml\` for instance.`,
      });
    case 'forbidden':
      throw new Refusal({
        where,
        what: 'the file may not be read by you',
        mend: 'Change its permissions, or copy it to where you may read it.',
      });
    case 'too long': {
      const size =
        outcome.bytes === null ? 'more' : `${Number((outcome.bytes / 1e6).toPrecision(2))} MB, more`;
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

function decoded(bytes: Uint8Array, where: string, kind: DocumentKind, shell: Shell): string {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
    throw new Refusal({ where, what: 'the text is in UTF-16', mend: 'Save it as UTF-8.' });
  }
  if (bytes.includes(0)) {
    throw new Refusal({
      where,
      what: 'this is no text file',
      mend: `Name a ${kind}: plain text in YAML, as \`${shell.typed} example\` writes it.`,
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
