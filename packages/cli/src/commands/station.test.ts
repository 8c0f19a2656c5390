import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { fakeMachine, fakeShell } from '../fake-shell.ts';
import { nodeShell } from '../node-shell.ts';
import { run } from '../run.ts';
import type { Machine, Shell } from '../shell.ts';

const folder = mkdtempSync(join(tmpdir(), 'coreward-cli-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Real files, because export and import are about them; everything else is faked. */
async function type(words: readonly string[], machine: Partial<Machine> = {}, changes: Partial<Shell> = {}) {
  const { read, create, isTaken } = nodeShell(process);
  const shell = fakeShell({}, { read, create, isTaken, machine: fakeMachine(machine), ...changes });
  const code = await run(words, shell);
  return { code, printed: shell.printed(), talked: shell.talked() };
}

const at = (name: string) => join(folder, name);

test('the command alone starts the station in the user’s own data folder, says where, and stops when asked', async () => {
  const opened: string[] = [];
  const { code, printed, talked } = await type([], {
    env: { XDG_DATA_HOME: folder },
    openPage: async (address) => opened.push(address) > 0,
  });
  expect(code).toBe(0);
  expect(printed).toMatch(/^Coreward is at http:\/\/127\.0\.0\.1:\d+\/\n$/u);
  expect(opened).toEqual([printed.slice('Coreward is at '.length).trim()]);
  expect(talked).toContain(`The bench book lies in ${join(folder, 'coreward')}.`);
  expect(talked).toContain('The station has stopped');
});

test('while it runs it answers, and `--no-open` leaves the browser alone', async () => {
  let status = 0;
  const { code, printed } = await type(['--data', at('answers'), '--no-open', '--port', '6307'], {
    openPage: () => Promise.reject(new Error('nobody asked for it')),
    untilStopped: async () => {
      status = (await fetch('http://127.0.0.1:6307/')).status;
    },
  });
  expect(code).toBe(0);
  expect(printed).toBe('Coreward is at http://127.0.0.1:6307/\n');
  expect(status).toBe(200);
});

test('the folder of a running station is refused to a second one, with the address of the first', async () => {
  let second = { code: 0, printed: '', talked: '' };
  await type(['station', '--data', at('held')], {
    untilStopped: async () => {
      second = await type(['station', '--data', at('held')]);
    },
  });
  expect(second).toMatchObject({ code: 2, printed: '' });
  expect(second.talked.replace(/\s+/gu, ' ')).toMatch(
    /has this bench book open, at http:\/\/127\.0\.0\.1:\d+\//u,
  );
});

for (const port of ['0', '65535', 'tea', '80.5']) {
  test(`the port \`${port}\` is refused`, async () => {
    const { code, talked } = await type(['--port', port]);
    expect(code).toBe(2);
    expect(talked).toBe(
      `--port\n  \`${port}\` is no port.\n  mend: Write a number from 1 to 65534, such as \`--port 6208\`.\n`,
    );
  });
}

test('what is exported into a folder or a file is imported elsewhere, and exports the same', async () => {
  await type(['--data', at('one')]);
  const whole = await type(['export', '--data', at('one')]);
  expect(JSON.parse(whole.printed)).toMatchObject({ coreward: 1, contents: 'bench book' });
  expect((await type(['export', at('files'), '--data', at('one')])).printed).toContain(
    '23 documents in 23 versions',
  );
  expect((await type(['export', at('book.json'), '--data', at('one')])).code).toBe(0);
  for (const [from, to] of [
    ['files', 'two'],
    ['book.json', 'three'],
  ] as const) {
    const taken = await type(['import', at(from), '--data', at(to)]);
    expect(taken.printed).toBe(
      'Taken in: 23 versions of 23 documents, 0 entries, 0 readings. Known already: 0.\n',
    );
    expect((await type(['export', '--data', at(to)])).printed).toBe(whole.printed);
  }
  expect((await type(['import', at('files'), '--data', at('two')])).printed).toContain('Known already: 23.');
});

test('an export never overwrites', async () => {
  await type(['--data', at('four')]);
  await type(['export', at('once'), '--data', at('four')]);
  const { code, talked } = await type(['export', at('once'), '--data', at('four')]);
  expect(code).toBe(2);
  expect(talked).toContain('it is not overwritten');
});

test('an export is written while the station runs; an import waits until it has stopped', async () => {
  let codes: readonly number[] = [];
  let said = '';
  await type(['--data', at('five')], {
    untilStopped: async () => {
      const out = await type(['export', at('beside.json'), '--data', at('five')]);
      const into = await type(['import', at('beside.json'), '--data', at('five')]);
      codes = [out.code, into.code];
      said = into.talked;
    },
  });
  expect(codes).toEqual([0, 2]);
  expect(said).toContain('stop it with Ctrl-C');
});

for (const words of [['export'], ['devices'], ['devices', 'revoke', 'abcd']]) {
  test(`\`coreward ${words.join(' ')}\` makes no bench book where there is none`, async () => {
    const { code, talked } = await type([...words, '--data', at('nothing')]);
    expect(code).toBe(2);
    expect(talked).toContain('there is no bench book here');
  });
}

test('an import of what is no export is refused', async () => {
  const { code, talked } = await type(['import', at('gone.json'), '--data', at('six')]);
  expect(code).toBe(2);
  expect(talked).toContain('there is no such file');
});

test('with `--lan` the address, a code and the fingerprint are told, and a fresh code for Enter', async () => {
  let enter = () => {};
  const { code, talked } = await type(['--lan', '--data', at('lan')], {
    onEnter: (listener) => {
      enter = listener;
      return () => {};
    },
    untilStopped: async () => enter(),
  });
  expect(code).toBe(0);
  if (talked.includes('in no network')) return; // a machine without any network has no address to tell
  const codes = [...talked.matchAll(/type the code {2}(\S{8}) /gu)].map(([, one]) => one);
  expect(codes).toHaveLength(2);
  expect(codes[0]).not.toBe(codes[1]);
  expect(talked).toMatch(/https:\/\/[\d.]+:\d+\/pair\n/u);
  expect(talked).toMatch(/(?:[0-9A-F]{2}:){15}[0-9A-F]{2}\n/u);
});

test('devices are listed and revoked by the first letters of their names', async () => {
  await type(['--data', at('devices')]);
  expect((await type(['devices', '--data', at('devices')])).printed).toBe('No other machine is paired.\n');
  const { BenchBook } = await import('@coreward/station');
  const book = new BenchBook(at('devices'), fakeMachine());
  book.addDevice('12345678-0000-4000-8000-000000000000', 'phone beside the mount', new Uint8Array(32));
  book.close();
  const { printed } = await type(['devices', '--data', at('devices')]);
  expect(printed).toBe(
    '12345678  phone beside the mount\n          paired 2026-11-25, last here 2026-11-25\n',
  );
  const json = JSON.parse((await type(['devices', '--json', '--data', at('devices')])).printed);
  expect(json.devices).toHaveLength(1);
  expect((await type(['devices', 'revoke', '9', '--data', at('devices')])).talked).toContain(
    'no such device',
  );
  const gone = await type(['devices', 'revoke', '1234', '--data', at('devices')]);
  expect(gone.printed).toBe('phone beside the mount is let in no longer.\n');
  expect((await type(['devices', '--data', at('devices')])).printed).toBe('No other machine is paired.\n');
});
