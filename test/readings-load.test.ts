import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadReadings } from '../scripts/readings/load.ts';

// The short form of `npm run bench:readings`; how fast this machine is is not asked.
test('of a thousand readings a second none is lost', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'coreward-readings-'));
  try {
    const world = { now: () => new Date(), randomBytes };
    const report = await loadReadings({ world, folder, seconds: 5, perSecond: 1000 });
    expect(report).toMatchObject({ sent: 5000, kept: 5000, firstWrong: null, faults: [] });
  } finally {
    rmSync(folder, { recursive: true });
  }
}, 60_000);
