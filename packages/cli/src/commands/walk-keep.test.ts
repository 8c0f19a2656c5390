import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type FakeFile, fakeShell } from '../fake-shell.ts';
import { run } from '../run.ts';

const example = readFileSync(
  new URL('../../../../examples/observing-loft.launch.yaml', import.meta.url),
  'utf8',
);

/** Walks on the same files, typing these lines. */
async function walk(files: Map<string, FakeFile>, words: readonly string[], lines: readonly string[] | null) {
  const given = { 'loft.yaml': example, ...Object.fromEntries(files) };
  const shell = fakeShell(lines === null ? given : { ...given, '-': lines.join('\n') });
  const code = await run(['walk', 'loft.yaml', ...words], shell);
  for (const [path, file] of shell.files) if (path !== '-') files.set(path, file);
  return { code, told: code === 0 ? JSON.parse(shell.printed()) : null, talked: shell.talked() };
}

const keep = ['--keep', 'loft.walk', '--json'];
const lineCount = (files: Map<string, FakeFile>) => String(files.get('loft.walk')).split('\n').length;

test('a kept walk goes on where it was stopped, undone answers and all', async () => {
  const [evening, morning] = [
    ['0.2', '3', '2.1', 's', '2.6', 'u', 'q'],
    ['4.4', 'n', '5', 'q'],
  ];
  const files = new Map<string, FakeFile>();
  const stopped = await walk(files, keep, evening);
  const resumed = await walk(files, keep, morning);
  // and it is the walk that was led in one go
  const whole = await walk(new Map(), ['--json'], [...evening.slice(0, -1), ...morning]);
  expect(stopped.told.moves.length).toBeGreaterThan(2);
  expect(resumed.talked).toContain('Going on from loft.walk.');
  expect(resumed.told).toEqual(whole.told);
});

test('a practice walk goes on at the bench as its hand left it', async () => {
  const practice = ['--practice', '7', ...keep];
  const files = new Map<string, FakeFile>();
  expect((await walk(files, practice, ['', '', '', '', '', 'q'])).told.moves).toHaveLength(5);
  const resumed = await walk(files, practice, ['', '', 'u', '', 'q']);
  const whole = await walk(
    new Map(),
    ['--practice', '7', '--json'],
    ['', '', '', '', '', '', '', 'u', '', 'q'],
  );
  expect(resumed.told).toEqual(whole.told);
});

test('what a device told is gone on from by typing for it; by another meter the walk begins anew', async () => {
  const says = (unit: string) => Array.from({ length: 400 }, () => `0.20 ${unit}\n`).join('');
  const files = new Map<string, FakeFile>([
    ['/dev/one', says('mW')],
    ['/dev/other', says('V')],
  ]);
  // a beam that is blocked from the first is taken by a press that means it
  const first = await walk(files, [...keep, '--lines', '/dev/one'], ['0.2 mW', 's', 'q']);
  expect(first.told.moves).toHaveLength(2);
  const typed = await walk(files, keep, ['s', 'q']);
  expect(typed.told.moves).toHaveLength(3);
  const other = await walk(files, [...keep, '--lines', '/dev/other'], ['q']);
  expect(other.told.moves).toHaveLength(0);
  expect(other.talked).toContain('begins anew from where the screws stand');
});

test('every answer is in the file before the next step is asked, and what cannot be kept ends the walk', async () => {
  const files = new Map<string, FakeFile>();
  await walk(files, keep, ['0.2', '3']); // the terminal is lost: nobody typed q
  expect(lineCount(files)).toBe(1 + 2 + 1);
  const shell = fakeShell(
    { 'loft.yaml': example, '-': '0.2\n3\nq' },
    { append: async () => 'no space left' },
  );
  expect(await run(['walk', 'loft.yaml', ...keep], shell)).toBe(2);
  expect(shell.talked()).toContain('no space left');
});

test('a file of another launch, other options, or with a line that was cut off is refused with its mend', async () => {
  const files = new Map<string, FakeFile>();
  await walk(files, keep, ['0.2', 'q']);
  const kept = String(files.get('loft.walk'));
  const other = await walk(new Map(files), [...keep, '--taught'], ['q']);
  expect(other.code).toBe(2);
  expect(other.talked).toContain('Name a file that is not there yet');
  const changed = new Map(files).set('loft.yaml', `${example}# changed\n`);
  expect((await walk(changed, keep, ['q'])).code).toBe(2);
  for (const end of ['{"do":"ans', '{"do":"answer","answer":{"outcome":"perhaps"}}\n']) {
    const broken = new Map(files).set('loft.walk', kept + end);
    const refused = await walk(broken, keep, ['q']);
    expect(refused.code).toBe(2);
    expect(refused.talked).toContain('loft.walk:3');
  }
  expect((await walk(new Map(files), keep, ['q'])).told.moves).toHaveLength(1);
});
