import { execFileSync, spawn, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

// The built command as a user runs it: another process, real files, real pipes.

const checkout = new URL('..', import.meta.url).pathname;
const bin = join(checkout, 'packages/cli/bin/coreward.js');
const folder = mkdtempSync(join(tmpdir(), 'coreward-'));

beforeAll(() => {
  execFileSync(process.execPath, ['scripts/build.mjs', 'cli'], { cwd: checkout });
});
afterAll(() => rmSync(folder, { recursive: true }));

function coreward(words: readonly string[], { input = '', cwd = folder } = {}) {
  const { npm_command: _, ...env } = process.env; // npm runs these tests, but not the user's command
  const { status, stdout, stderr } = spawnSync(process.execPath, [bin, ...words], {
    cwd,
    input,
    env,
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

for (const example of ['observing-loft', 'five-lines']) {
  test(`the forecast of examples/${example}.launch.yaml is told, and goes through a pipe whole`, () => {
    const file = join(checkout, `examples/${example}.launch.yaml`);
    const { status, stdout, stderr } = coreward(['forecast', file]);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toContain('leaves the far end');
    expect(stdout).toMatch(/Cautions\n[\s\S]*switch\s+on\.\n$/u);
    const json = coreward(['forecast', file, '--json']);
    expect(JSON.parse(json.stdout).coreward).toBe(1);
  });
}

test.runIf(existsSync('/proc/self'))('a folder that cannot be made is refused at once', () => {
  const { status, stderr } = coreward(['example', '/proc/no-such-thing/bench']);
  expect(status).toBe(2);
  expect(stderr).toContain('example FOLDER');
});

test('what `coreward example` writes, `coreward forecast` reads', () => {
  const written = coreward(['example', 'new/bench']);
  expect(written.status).toBe(0);
  expect(coreward(['forecast', 'new/bench/observing-loft.launch.yaml']).status).toBe(0);
  expect(coreward(['example', 'new/bench']).status).toBe(2);
  expect(coreward(['example', 'new/bench/observing-loft.launch.yaml']).stderr).toContain(
    'a file stands where',
  );
});

test('what a killed run left half-written hinders nothing, and no half file bears a whole one’s name', () => {
  mkdirSync(join(folder, 'killed'));
  writeFileSync(join(folder, 'killed/observing-loft.launch.yaml.part'), 'coreward: 1\nlas');
  expect(coreward(['example', 'killed']).status).toBe(0);
  expect(readdirSync(join(folder, 'killed')).sort()).toEqual([
    'observing-loft.drawer.yaml',
    'observing-loft.launch.yaml',
  ]);
  expect(coreward(['forecast', 'killed/observing-loft.launch.yaml']).status).toBe(0);
});

for (const words of [
  ['match', 'examples/observing-loft.drawer.yaml'],
  ['walk', 'examples/observing-loft.launch.yaml'],
]) {
  test(`Ctrl-C in the middle of \`coreward ${words[0]}\` ends it at once, without a stack trace`, async () => {
    const child = spawn(process.execPath, [bin, ...words], { cwd: checkout });
    let said = '';
    let stopped = false;
    const end = await new Promise((resolve) => {
      child.on('close', (code, signal) => resolve({ code, signal }));
      child.stderr.setEncoding('utf8').on('data', (text: string) => {
        said += text;
        if (stopped || !/\d of \d|dark reading\?/u.test(said)) return;
        stopped = true;
        child.kill('SIGINT');
      });
    });
    // a shell that reads a script stops the script, too, only if the signal ended the command
    expect(end).toEqual({ code: null, signal: 'SIGINT' });
    expect(said).not.toMatch(/Error|\n\s+at |node:/u);
  });
}

test('with nothing behind it the command starts the station, which Ctrl-C stops', async () => {
  const { npm_command: _, DISPLAY: __, WAYLAND_DISPLAY: ___, ...env } = process.env;
  const child = spawn(process.execPath, [bin], { env: { ...env, HOME: folder, XDG_DATA_HOME: folder } });
  let said = '';
  const status = await new Promise((resolve) => {
    child.on('close', resolve);
    child.stdout.setEncoding('utf8').on('data', async (text: string) => {
      said += text;
      const page = await fetch(said.slice('Coreward is at '.length).trim());
      said += await page.text();
      child.kill('SIGINT');
    });
  });
  expect(said).toMatch(/^Coreward is at http:\/\/127\.0\.0\.1:\d+\/\n<!doctype html>/u);
  expect(status).toBe(0);
});

test('a launch comes through standard input', () => {
  const least = `coreward: 1
laser: { wavelength: 520 nm, power: 5 mW, beam: { diameter: 1.1 mm, at: 300 mm } }
collimator: { focal length: 8 mm }
fibre: { type: G.652.D }`;
  expect(coreward(['forecast', '-'], { input: least }).status).toBe(0);
});

const latin1 = Buffer.from([0x61, 0x3a, 0x20, 0xe9]);
const utf16 = Buffer.from('\ufeffcoreward: 1', 'utf16le');

// [what is there, how it comes about, what is said of it]
const hopeless: readonly (readonly [string, (path: string) => void, string])[] = [
  ['missing', () => {}, 'there is no such file'],
  [
    'program',
    (path) => writeFileSync(path, Buffer.from([0x7f, 0x45, 0x4c, 0x46, 0])),
    'this is no text file',
  ],
  ['code-page', (path) => writeFileSync(path, latin1), 'is not UTF-8'],
  ['wide', (path) => writeFileSync(path, utf16), 'UTF-16'],
  ['empty', (path) => writeFileSync(path, ''), 'nothing stands where keys belong'],
  ['text', (path) => writeFileSync(path, 'Dear diary,\n'), 'mend: '],
  ['unclosed', (path) => writeFileSync(path, 'coreward: 1\nlaser: {'), 'mend: '],
  ['deep', (path) => writeFileSync(path, '['.repeat(100_000)), 'mend: '],
];

for (const [name, make, said] of hopeless) {
  test(`a file that is ${name} is refused with where, what and mend`, () => {
    make(join(folder, name));
    const { status, stdout, stderr } = coreward(['forecast', name]);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain(said);
    expect(stderr).toMatch(new RegExp(`^${name}(:\\d+)?.*\\n {2}\\S[\\s\\S]*\\n {2}mend: \\S`, 'u'));
    expect(stderr).not.toMatch(/^ +at /mu); // no stack
  });
}

test('a folder is refused', () => {
  const { status, stderr } = coreward(['forecast', '.']);
  expect(status).toBe(2);
  expect(stderr).toContain('this is a folder');
});

// ten times what a program can hold in one piece, 2 GiB at most in Node 20: who reads it fails otherwise, or not soon
test('a file of 20 GB is refused unread', () => {
  const path = join(folder, 'huge');
  writeFileSync(path, '');
  truncateSync(path, 2e10);
  const { status, stderr } = coreward(['forecast', 'huge']);
  expect(status).toBe(2);
  expect(stderr).toContain('there is 20000 MB, more than the 256 kB');
});

test('standard input without end is refused, too', async () => {
  const child = spawn(process.execPath, [bin, 'forecast', '-'], { stdio: ['pipe', 'ignore', 'pipe'] });
  child.stdin.on('error', () => {}); // the command stops listening
  const chunk = Buffer.alloc(64 * 1024, 0x20);
  const pour = () => {
    while (child.stdin.writable && child.stdin.write(chunk));
  };
  child.stdin.on('drain', pour);
  pour();
  let said = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    said += text;
  });
  const status = await new Promise((resolve) => child.on('close', resolve));
  child.stdin.destroy();
  expect(status).toBe(2);
  expect(said).toContain('more than the 256 kB');
});

test('a reader that has seen enough, such as `head`, ends the command quietly', async () => {
  const child = spawn(process.execPath, [bin, 'schema'], { stdio: ['ignore', 'pipe', 'pipe'] });
  child.stdout.destroy();
  let said = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    said += text;
  });
  const status = await new Promise((resolve) => child.on('close', resolve));
  expect(said).toBe('');
  expect(status).toBe(0);
});

test('an unknown command is refused with the one that was probably meant', () => {
  const { status, stderr } = coreward(['forcast', 'x']);
  expect(status).toBe(2);
  expect(stderr).toContain('mend: Write `forecast`.');
});
