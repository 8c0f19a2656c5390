import type { CreateOutcome, Machine, ReadOutcome, Shell } from './shell.ts';

/** What a fake file does when it is read: hold a text or bytes, be something else, or break. */
export type FakeFile = string | Uint8Array | ReadOutcome | Error;

/** A world without a machine, for tests: what goes in is given, what comes out is kept. */
export interface FakeShell extends Shell {
  readonly printed: () => string;
  readonly talked: () => string;
  readonly files: Map<string, FakeFile>;
}

/** A shell whose files, input and machine the test gives. */
export function fakeShell(
  files: Readonly<Record<string, FakeFile>> = {},
  changes: Partial<Shell> = {},
): FakeShell {
  const held = new Map(Object.entries(files));
  let printed = '';
  let talked = '';
  const read = async (path: string, most: number): Promise<ReadOutcome> => {
    const file = held.get(path);
    if (file === undefined) return { kind: 'missing' };
    if (file instanceof Error) throw file;
    if (typeof file === 'object' && 'kind' in file) return file;
    const bytes = typeof file === 'string' ? new TextEncoder().encode(file) : file;
    return bytes.length > most ? { kind: 'too long', bytes: bytes.length } : { kind: 'read', bytes };
  };
  return {
    typed: 'coreward',
    read,
    readInput: (most) => read('-', most),
    lines: async function* () {
      const typed = held.get('-');
      if (typeof typed === 'string') yield* typed.split('\n');
    },
    listen: async function* (path) {
      const said = held.get(path);
      if (typeof said !== 'string') throw Object.assign(new Error('not there'), { code: 'ENOENT' });
      yield said;
    },
    inputIsKeyboard: false,
    isTaken: async (path) => held.has(path),
    create: async (path, text): Promise<CreateOutcome> => {
      if (held.has(path)) return { kind: 'exists' };
      held.set(path, text);
      return { kind: 'created' };
    },
    append: async (path, text) => {
      const before = held.get(path);
      held.set(path, `${typeof before === 'string' ? before : ''}${text}`);
      return null;
    },
    print: (text) => {
      printed += text;
    },
    talk: (text) => {
      talked += text;
    },
    clock: () => 0,
    width: 80,
    bold: false,
    debug: false,
    machine: fakeMachine(),
    ...changes,
    printed: () => printed,
    talked: () => talked,
    files: held,
  };
}

/** A machine without a browser, on which time stands still and nothing is asked to stop twice. */
export function fakeMachine(changes: Partial<Machine> = {}): Machine {
  let drawn = 0;
  return {
    now: () => new Date('2026-11-25T10:00:00.000Z'),
    randomBytes: (count) => {
      drawn += 1;
      return Uint8Array.from({ length: count }, (_, index) => (drawn * 131 + index * 37) & 0xff);
    },
    platform: 'linux',
    home: '/nowhere',
    env: {},
    screens: '/nowhere',
    openPage: async () => false,
    onEnter: () => () => {},
    untilStopped: async () => {},
    ...changes,
  };
}
