// Reads a thousand readings a second off a serial line for ten minutes and looks whether every one is in the bench book:
// `npm run bench:readings`, or in less time `npm run bench:readings -- 60 10000` (seconds, readings a second).
import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { loadReadings } from './load.ts';

const seconds = Number(process.argv[2] ?? 600);
const perSecond = Number(process.argv[3] ?? 1000);
const folder = mkdtempSync(join(tmpdir(), 'coreward-readings-'));
const report = await loadReadings({
  world: { now: () => new Date(), randomBytes },
  folder,
  seconds,
  perSecond,
  progress: (sent) => console.log(`${sent} readings sent`),
});
console.log(JSON.stringify(report));
rmSync(folder, { recursive: true });
process.exitCode = report.firstWrong === null && report.faults.length === 0 ? 0 : 1;
