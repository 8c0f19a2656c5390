import { Refusal } from '@coreward/bench';
import { expect, test } from 'vitest';
import { fakeShell } from './fake-shell.ts';
import { readDocument } from './read-document.ts';

async function refusal(path: string, files: Parameters<typeof fakeShell>[0]) {
  const error: unknown = await readDocument(path, fakeShell(files)).catch((thrown: unknown) => thrown);
  expect(error).toBeInstanceOf(Refusal);
  const [part] = (error as Refusal).parts;
  return part;
}

const bytes = (...values: number[]) => Uint8Array.from(values);

// [what is there, what is said of it, what the mend mentions]
const hopeless = [
  ['no file', {}, 'there is no such file', 'coreward example'],
  ['a folder', { x: { kind: 'folder' } }, 'this is a folder', '.launch.yaml'],
  ['a file of somebody else', { x: { kind: 'forbidden' } }, 'may not be read by you', 'permissions'],
  ['a huge file', { x: { kind: 'too long', bytes: 1e8 } }, 'there is 100 MB, more than the 256 kB', 'Check'],
  ['an endless file', { x: { kind: 'too long', bytes: null } }, 'more than the 256 kB', 'Check'],
  ['a broken disk', { x: { kind: 'failed', reason: 'EIO' } }, 'could not be read (EIO)', 'Copy'],
  ['a program', { x: bytes(0x7f, 0x45, 0x4c, 0x46, 0) }, 'this is no text file', 'YAML'],
  ['text in UTF-16', { x: bytes(0xff, 0xfe, 0x61, 0) }, 'UTF-16', 'UTF-8'],
] as const;

for (const [name, files, what, mend] of hopeless) {
  test(`${name} is refused with a mend`, async () => {
    const part = await refusal('x', files);
    expect(part?.where).toBe('x');
    expect(part?.what).toContain(what);
    expect(part?.mend).toContain(mend);
  });
}

test('a character of an old code page is refused by its line', async () => {
  // "a: 1\nb: é" in ISO 8859-1
  const part = await refusal('x', { x: bytes(0x61, 0x3a, 0x20, 0x31, 0x0a, 0x62, 0x3a, 0x20, 0xe9) });
  expect(part?.where).toBe('x:2');
  expect(part?.mend).toContain('UTF-8');
});

test('a file is read without its byte order mark', async () => {
  const { text } = await readDocument('x', fakeShell({ x: bytes(0xef, 0xbb, 0xbf, 0x61) }));
  expect(text).toBe('a');
});

test('a dash reads standard input, and says so in refusals', async () => {
  expect(await readDocument('-', fakeShell({ '-': 'µ' }))).toEqual({ file: 'standard input', text: 'µ' });
});

test('at a keyboard a dash says how to end', async () => {
  const shell = fakeShell({ '-': '' }, { inputIsKeyboard: true });
  await readDocument('-', shell);
  expect(shell.talked()).toContain('Ctrl-D');
});

test('a file at the limit is read, a byte more is not', async () => {
  const most = 3 * 256 * 1024;
  const files = { full: new Uint8Array(most).fill(0x20), over: new Uint8Array(most + 1).fill(0x20) };
  expect((await readDocument('full', fakeShell(files))).text).toHaveLength(most);
  expect((await refusal('over', files))?.what).toContain('256 kB');
});
