import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildCommandLine } from '../scripts/build-command-line.mjs';
import { seeded } from '../scripts/kill-station/chance.ts';
import { killStation } from '../scripts/kill-station/kill-station.ts';

// The short form of `npm run bench:kill`. Built into a folder of its own: another test builds the command as well.
const built = new URL('../coverage/kill-station-test', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'coreward-kill-'));

beforeAll(() => buildCommandLine(built), 60_000);
afterAll(() => {
  for (const path of [folder, built]) rmSync(path, { recursive: true, force: true });
});

test('what was acknowledged is there after the station was killed', async () => {
  const report = await killStation(join(built, 'main.js'), folder, 8, seeded(5));
  expect(report.faults).toEqual([]);
  // a burst in which nothing was kept would show nothing
  expect(report.acknowledged).toBeGreaterThan(8);
}, 60_000);
