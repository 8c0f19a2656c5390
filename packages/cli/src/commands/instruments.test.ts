import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BenchBook } from '@coreward/station';
import { afterAll, expect, test } from 'vitest';
import { fakeMachine, fakeShell } from '../fake-shell.ts';
import { nodeShell } from '../node-shell.ts';
import { run } from '../run.ts';
import type { Machine } from '../shell.ts';

const folder = mkdtempSync(join(tmpdir(), 'coreward-cli-instruments-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** A log is played in real time. */
const alive: Partial<Machine> = { now: () => new Date() };

async function type(words: readonly string[], machine: Partial<Machine> = {}) {
  const { isTaken } = nodeShell(process);
  const shell = fakeShell({}, { isTaken, machine: fakeMachine({ ...alive, ...machine }) });
  const code = await run(words, shell);
  return { code, printed: shell.printed(), talked: shell.talked() };
}

const id = 'abcd1234-0000-4000-8000-000000000000';
/** Ten readings a second for a minute, of 1.5 mW and 1.6 mW by turns, and each tenth beyond its upper end. */
const log = `t,p_mW\n${Array.from({ length: 600 }, (_, at) => `${at / 10},${at % 10 === 5 ? 2.5 : at % 2 === 0 ? 1.5 : 1.6}`).join('\n')}\n`;

/** A bench book with one instrument in it. */
function bookAt(name: string, on: boolean): string {
  const place = join(folder, name);
  const book = new BenchBook(place, fakeMachine(alive));
  book.readings.write({
    id,
    kind: 'replay',
    unit: 'W',
    name: 'log of a guide light',
    setup: JSON.stringify({ kind: 'replay', log, unit: 'W', speed: 1 }),
    floor: null,
    saturation: 2e-3,
    on,
    putAway: false,
  });
  book.close();
  return place;
}

const pause = (milliseconds: number) => new Promise<void>((done) => setTimeout(done, milliseconds));

test('without a station instruments are listed as the book has them, and none can be watched', async () => {
  const place = bookAt('alone', true);
  const listed = await type(['instruments', '--data', place]);
  expect(listed.printed).toBe(
    'abcd1234  log of a guide light, replay\n          on, once the station runs, no reading\n',
  );
  expect(listed.talked).toContain('nothing is read now');
  const { station, instruments } = JSON.parse(
    (await type(['instruments', '--json', '--data', place])).printed,
  );
  expect(station).toBeNull();
  expect(instruments).toMatchObject([{ id, unit: 'W', state: null, on: true, saturation: 2e-3 }]);
  const watched = await type(['instruments', 'watch', 'abcd', '--data', place]);
  expect(watched.code).toBe(2);
  expect(watched.talked).toContain('Start `coreward` in another terminal.');
});

test('with a station they are listed as it has them, and readings are printed as they come', async () => {
  const place = bookAt('beside', true);
  let listed = '';
  let watched = { code: 0, printed: '', talked: '' };
  let lines = '';
  await type(['--data', place], {
    untilStopped: async () => {
      await pause(300);
      const waits = { untilStopped: () => pause(1_500) };
      watched = await type(['instruments', 'watch', 'log of a guide light', '--data', place], waits);
      lines = (await type(['instruments', 'watch', 'abcd', '--json', '--data', place], waits)).printed;
      listed = (await type(['instruments', '--data', place])).printed;
    },
  });
  expect(listed).toMatch(
    /^abcd1234 {2}log of a guide light, replay\n {10}reading, \d\.\d00 mW(?: at its upper end)?, \d+ a second/u,
  );
  expect(watched.code).toBe(0);
  expect(watched.printed).toMatch(/^(?:\d{4}-\d\d-\d\dT[\d:.]+Z {2}\d\.\d00 mW(?: at its upper end)?\n)+$/u);
  expect(watched.printed).toContain('2.500 mW at its upper end');
  const told = lines
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(told.length).toBeGreaterThan(5);
  for (const one of told) {
    expect(one).toMatchObject({ instrument: 'log of a guide light', unit: 'W' });
    expect([1.5e-3, 1.6e-3, 2.5e-3]).toContain(one.value);
    expect(one.saturated).toBe(one.value === 2.5e-3);
  }
}, 30_000);

test('who watches is told when the station stops, and when there is nothing by that name', async () => {
  const place = bookAt('stops', false);
  let watching: ReturnType<typeof type> | null = null;
  let nobody = { code: 0, printed: '', talked: '' };
  await type(['--data', place], {
    untilStopped: async () => {
      nobody = await type(['instruments', 'watch', 'no such', '--data', place]);
      watching = type(['instruments', 'watch', 'abcd', '--data', place], {
        untilStopped: () => new Promise(() => {}),
      });
      await pause(500);
    },
  });
  expect(nobody.code).toBe(2);
  expect(nobody.talked).toContain('there is no such instrument');
  const watched = await watching!;
  expect(watched.code).toBe(2);
  expect(watched.talked).toContain('is off: switch it on in the browser');
  expect(watched.talked).toContain('the station has stopped');
}, 30_000);
