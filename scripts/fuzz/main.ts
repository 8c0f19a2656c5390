// Tries to break the readers with random input: `npm run fuzz`, `npm run fuzz -- 1000000 7` (runs, seed).
import { fuzzDocuments } from './documents.fuzz.ts';
import { fuzzUnits } from './units.fuzz.ts';

const runs = Number(process.argv[2] ?? 100_000);
const seed = Number(process.argv[3] ?? 1);
for (const [name, fuzz] of [
  ['units', fuzzUnits],
  ['documents', fuzzDocuments],
] as const) {
  const started = performance.now();
  const result = fuzz(runs, seed);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log(`${name}: ${JSON.stringify(result)} in ${seconds} s`);
}
