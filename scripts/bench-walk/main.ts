// Walks over simulated benches and prints how it went:
// npm run bench:walk [-- --benches FILE | --drawn LAW] [--policy NAME] [--seeds A-B] [--noise N] [--json] [--write-docs]
import { readFileSync, writeFileSync } from 'node:fs';
import { Refusal } from '@coreward/bench';
import { documentCount, withWalkTable } from './document.ts';
import { requestOf } from './request.ts';
import { suitesOf } from './suites.ts';
import { walkTable } from './walk-table.ts';
import { jsonOf, walked } from './walked.ts';

const page = 'docs/walk.md';

function run(args: readonly string[]): void {
  const request = requestOf(args);
  if (request.writeDocs) {
    writeFileSync(page, withWalkTable(readFileSync(page, 'utf8'), documentCount()));
    return;
  }
  const rows = suitesOf(request).flatMap(({ name, benches }) =>
    request.policies.map((policy) => walked(policy, name, benches, request.stream)),
  );
  console.log(request.json ? JSON.stringify(rows.map(jsonOf), null, 2) : walkTable(rows));
}

try {
  run(process.argv.slice(2));
} catch (error) {
  if (!(error instanceof Refusal)) throw error;
  for (const { where, what, mend } of error.parts) console.error(`${where}: ${what}. ${mend}`);
  process.exitCode = 2;
}
