import { createReadStream } from 'node:fs';
import { access, link, mkdir, open, rm, stat, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { createInterface } from 'node:readline';
import { nodeMachine } from './node-machine.ts';
import type { CreateOutcome, ReadOutcome, Shell } from './shell.ts';

/** Wider lines than this are hard to read, however wide the terminal. */
const widest = 80;
/** The ledger's figures need this much. */
const narrowest = 60;

/** The real world, by way of Node. */
export function nodeShell(process: NodeJS.Process): Shell {
  const { stdin, stdout, stderr, env } = process;
  return {
    // npm says so when it, or npx, started us
    typed: env.npm_command === undefined ? 'coreward' : 'npx coreward',
    read: readFileWithin,
    readInput: (most) => readStreamWithin(stdin, most),
    lines: () => createInterface({ input: stdin }),
    listen: (path) => createReadStream(path, 'utf8'),
    inputIsKeyboard: stdin.isTTY === true,
    isTaken: (path) =>
      access(path).then(
        () => true,
        () => false,
      ),
    create,
    append,
    print: (text) => void stdout.write(text),
    talk: (text) => void stderr.write(text),
    clock: () => performance.now(),
    width: Math.max(narrowest, Math.min(widest, stdout.columns ?? widest)),
    bold: stdout.isTTY === true && (env.NO_COLOR ?? '') === '' && env.TERM !== 'dumb',
    debug: env.COREWARD_DEBUG === '1',
    machine: nodeMachine(process),
  };
}

async function readFileWithin(path: string, most: number): Promise<ReadOutcome> {
  try {
    const file = await open(path, 'r');
    try {
      const about = await file.stat();
      if (about.isDirectory()) return { kind: 'folder' };
      if (about.isFile() && about.size > most) return { kind: 'too long', bytes: about.size };
      return await readStreamWithin(file.createReadStream({ autoClose: false }), most);
    } finally {
      await file.close();
    }
  } catch (error) {
    return failureOf(error);
  }
}

/** A stream can be endless whatever its size says: `/dev/zero`, a pipe. */
async function readStreamWithin(stream: AsyncIterable<Uint8Array>, most: number): Promise<ReadOutcome> {
  try {
    const chunks: Uint8Array[] = [];
    let length = 0;
    for await (const chunk of stream) {
      length += chunk.length;
      if (length > most) return { kind: 'too long', bytes: null };
      chunks.push(chunk);
    }
    return { kind: 'read', bytes: Buffer.concat(chunks) };
  } catch (error) {
    return failureOf(error);
  }
}

async function create(path: string, text: string): Promise<CreateOutcome> {
  try {
    await makeFolder(dirname(path));
    await writeWhole(path, text);
    return { kind: 'created' };
  } catch (error) {
    const code = codeOf(error);
    if (code === 'ENOTDIR') return { kind: 'no folder' };
    // mkdir says so too when a file bears the folder's name
    if (code === 'EEXIST')
      return (error as NodeJS.ErrnoException).syscall === 'mkdir'
        ? { kind: 'no folder' }
        : { kind: 'exists' };
    if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') return { kind: 'forbidden' };
    if (code === 'ENOSPC' || code === 'EDQUOT') return { kind: 'full' };
    return { kind: 'failed', reason: reasonOf(error) };
  }
}

async function append(path: string, text: string): Promise<string | null> {
  try {
    const file = await open(path, 'a');
    try {
      await file.writeFile(text);
      await file.sync();
    } finally {
      await file.close();
    }
    return null;
  } catch (error) {
    return reasonOf(error);
  }
}

/**
 * A new file that bears its name only once all of it is written: what is killed meanwhile leaves `….part`, which the next try
 * writes anew.
 */
async function writeWhole(path: string, text: string): Promise<void> {
  const part = `${path}.part`;
  try {
    await writeFile(part, text);
    await link(part, path); // unlike a rename it never replaces what has come there meanwhile
  } catch (error) {
    // some file systems of cards and networks give a file one name only
    if (!['EPERM', 'ENOSYS', 'ENOTSUP', 'EOPNOTSUPP'].includes(codeOf(error) ?? '')) throw error;
    await writeInPlace(path, text);
  } finally {
    // on a full disk, too: it would take the last of the room
    await rm(part, { force: true });
  }
}

async function writeInPlace(path: string, text: string): Promise<void> {
  const file = await open(path, 'wx');
  try {
    await file.writeFile(text);
  } catch (error) {
    await rm(path, { force: true }); // half a file under the name of a whole one
    throw error;
  } finally {
    await file.close();
  }
}

/**
 * A folder and those it stands in. Step by step: where a file system takes no folders (`/proc`), Node's own way of making
 * them all at once tries for ever.
 */
async function makeFolder(path: string): Promise<void> {
  try {
    await mkdir(path);
  } catch (error) {
    const code = codeOf(error);
    if (code === 'EEXIST' && (await stat(path)).isDirectory()) return;
    const parent = dirname(path);
    if (code !== 'ENOENT' || parent === path || (await isFolder(parent))) throw error;
    await makeFolder(parent);
    await mkdir(path);
  }
}

const isFolder = async (path: string): Promise<boolean> =>
  stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );

function failureOf(error: unknown): ReadOutcome {
  switch (codeOf(error)) {
    case 'ENOENT':
    case 'ENOTDIR':
      return { kind: 'missing' };
    case 'EISDIR':
      return { kind: 'folder' };
    case 'EACCES':
    case 'EPERM':
      return { kind: 'forbidden' };
    default:
      return { kind: 'failed', reason: reasonOf(error) };
  }
}

const codeOf = (error: unknown): string | undefined =>
  error instanceof Error ? (error as NodeJS.ErrnoException).code : undefined;

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
