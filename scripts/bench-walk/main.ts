// Walks over simulated benches and prints how it went:
// npm run bench:walk [-- --benches FILE | --drawn LAW] [--policy NAME] [--seeds A-B] [--noise N] [--json]
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { type BenchToWalk, benchesOf } from './bench-file.ts';
import { drawnBenches } from './drawn-benches.ts';
import { policies } from './policies.ts';
import { walkTable } from './walk-table.ts';
import { type WalkRow, walked } from './walked.ts';

const { values } = parseArgs({
  options: {
    benches: { type: 'string', multiple: true },
    drawn: { type: 'string', multiple: true },
    policy: { type: 'string', multiple: true },
    seeds: { type: 'string' },
    noise: { type: 'string', default: '0' },
    json: { type: 'boolean', default: false },
  },
});

/** Seeds that settings are chosen on. */
const usualDrawn = '5000-5199';

const suiteOf = (file: string) => basename(file, '.json').replace(/^(align-)?benches-/, '');

function seedsOf(text: string | undefined): readonly [number, number] {
  if (text === undefined) return [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const read = /^(\d+)-(\d+)$/.exec(text);
  if (read === null)
    throw new Error(`--seeds: \`${text}\` is no range. Write two whole numbers, such as \`0-199\`.`);
  return [Number(read[1]), Number(read[2])];
}

function streamOf(text: string): number {
  if (!/^\d{1,4}$/.test(text)) {
    throw new Error(`--noise: \`${text}\` is no stream of noise. Write a whole number, such as \`1\`.`);
  }
  return Number(text);
}

const stream = streamOf(values.noise);
const shipped = ['V', 'T'].map((suite) => `packages/bench/reference/walk/benches-${suite}.json`);
const files = values.benches ?? (values.drawn === undefined ? shipped : []);
const names = values.policy ?? Object.keys(policies);
const suites: readonly (readonly [string, readonly BenchToWalk[]])[] = [
  ...files.map((file) => [suiteOf(file), benchesOf(file, seedsOf(values.seeds))] as const),
  ...(values.drawn ?? []).map(
    (law) => [law, drawnBenches(law, seedsOf(values.seeds ?? usualDrawn))] as const,
  ),
];
const rows: WalkRow[] = [];
for (const [suite, benches] of suites) {
  if (benches.length === 0) throw new Error(`${suite}: no bench has a seed in that range.`);
  for (const name of names) {
    const begin = policies[name];
    if (begin === undefined) {
      throw new Error(`--policy: there is no \`${name}\`. Write one of ${Object.keys(policies).join(', ')}.`);
    }
    rows.push(walked(name, suite, begin, benches, stream));
  }
}
console.log(values.json ? JSON.stringify(rows, null, 2) : walkTable(rows));
