// Kills a station at random moments while it is written to: `npm run bench:kill`, `npm run bench:kill -- 200 7` (bursts,
// seed). Every acknowledged write must be there afterwards, and the file must be whole.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildCommandLine } from '../build-command-line.mjs';
import { seeded } from './chance.ts';
import { killStation } from './kill-station.ts';

const bursts = Number(process.argv[2] ?? 200);
const seed = Number(process.argv[3] ?? 1);
const folder = mkdtempSync(join(tmpdir(), 'coreward-kill-'));
const built = 'coverage/kill-station';

await buildCommandLine(built);
const started = performance.now();
const report = await killStation(`${built}/main.js`, folder, bursts, seeded(seed), (burst, acknowledged) => {
  if (burst % 20 === 0) console.log(`${burst} bursts, ${acknowledged} writes acknowledged`);
});
console.log(`${JSON.stringify(report)} in ${((performance.now() - started) / 1000).toFixed(0)} s`);
rmSync(folder, { recursive: true });
process.exitCode = report.faults.length === 0 ? 0 : 1;
