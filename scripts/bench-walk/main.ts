// Walks over simulated benches and prints how it went:
// npm run bench:walk [-- --benches FILE] [--policy NAME] [--seeds A-B] [--json]
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { benchesOf } from './bench-file.ts';
import { policies } from './policies.ts';
import { walkTable } from './walk-table.ts';
import { type WalkRow, walked } from './walked.ts';

const { values } = parseArgs({
  options: {
    benches: { type: 'string', multiple: true },
    policy: { type: 'string', multiple: true },
    seeds: { type: 'string' },
    json: { type: 'boolean', default: false },
  },
});

function seedsOf(text: string | undefined): readonly [number, number] {
  if (text === undefined) return [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const read = /^(\d+)-(\d+)$/.exec(text);
  if (read === null)
    throw new Error(`--seeds: \`${text}\` is no range. Write two whole numbers, such as \`0-199\`.`);
  return [Number(read[1]), Number(read[2])];
}

const files =
  values.benches ?? ['V', 'T'].map((suite) => `packages/bench/reference/walk/benches-${suite}.json`);
const names = values.policy ?? Object.keys(policies);
const rows: WalkRow[] = [];
for (const file of files) {
  const benches = benchesOf(file, seedsOf(values.seeds));
  if (benches.length === 0) throw new Error(`${file}: no bench has a seed in that range.`);
  const suite = basename(file, '.json').replace(/^(align-)?benches-/, '');
  for (const name of names) {
    const begin = policies[name];
    if (begin === undefined) {
      throw new Error(`--policy: there is no \`${name}\`. Write one of ${Object.keys(policies).join(', ')}.`);
    }
    rows.push(walked(name, suite, begin, benches));
  }
}
console.log(values.json ? JSON.stringify(rows, null, 2) : walkTable(rows));
