import { basename } from 'node:path';
import { type BenchToWalk, benchesOf } from './bench-file.ts';
import { drawnBenches, widerFoot } from './drawn-benches.ts';
import type { Request } from './request.ts';

/** Benches that are counted together. */
export interface Suite {
  readonly name: string;
  readonly benches: readonly BenchToWalk[];
}

/** Seeds that settings are chosen on. */
const usualDrawn = [5000, 5199] as const;
const all = [0, Number.MAX_SAFE_INTEGER] as const;

/** What stands in the tables where nothing else is asked for. */
const usual = ['V', 'T'] as const;
export const shippedFile = (suite: string) => `packages/bench/reference/walk/benches-${suite}.json`;

/** @throws {Refusal} if a file of benches cannot be walked */
export function suitesOf(request: Pick<Request, 'benches' | 'drawn' | 'seeds'>): readonly Suite[] {
  const isUsual = request.benches.length === 0 && request.drawn.length === 0;
  const files = isUsual ? usual.map(shippedFile) : request.benches;
  return [
    ...files.map((file) => ({
      name: basename(file, '.json').replace(/^(align-)?benches-/u, ''),
      benches: benchesOf(file, request.seeds ?? all),
    })),
    ...request.drawn.map((law) => ({ name: law, benches: drawnBenches(law, request.seeds ?? usualDrawn) })),
  ];
}

/** The same benches on a weak wide foot. */
export const onFoot = (benches: readonly BenchToWalk[]): readonly BenchToWalk[] =>
  benches.map((bench) => ({
    ...bench,
    hidden: { ...bench.hidden, shape: { kind: 'peak-on-foot', ...widerFoot } },
  }));
