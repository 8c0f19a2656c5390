import { isDeepStrictEqual } from 'node:util';
import {
  fiveLinesLaunch,
  type Launch,
  observingLoftDrawer,
  observingLoftLaunch,
  Refusal,
  readDrawer,
  readLaunch,
  writeLaunch,
} from '../../packages/bench/src/index.ts';
import { type Chance, chanceFrom } from './chance.ts';
import { mutateDocument, randomText } from './mutate-document.ts';

/** What a run of documents came to. */
export interface FuzzedDocuments {
  readonly runs: number;
  readonly seed: number;
  readonly read: number;
  readonly refused: number;
  readonly refusals: number;
  readonly slowestMilliseconds: number;
}

/** A document of a few kB is read in about 2 ms; this leaves room for a busy machine, not for a search without end. */
const longestMilliseconds = 3000;

const launches = [observingLoftLaunch, fiveLinesLaunch];
const bases = [...launches, observingLoftDrawer];

/**
 * Reads `runs` documents that are broken in random ways. Each must be read or refused, with where, what and mend, and
 * within bounded time; what is read must be finite throughout and survive being written and read again.
 *
 * @throws {Error} with the document and the seed, at the first that does anything else
 */
export function fuzzDocuments(runs: number, seed: number): FuzzedDocuments {
  const chance = chanceFrom(seed);
  let read = 0;
  let refusals = 0;
  let slowest = 0;
  for (let run = 0; run < runs; run += 1) {
    const text = chance.next() < 0.1 ? randomText(chance) : mutateDocument(chance.pick(bases), bases, chance);
    const started = performance.now();
    try {
      const problems = readOne(text, chance);
      if (problems === 0) read += 1;
      refusals += problems;
    } catch (error) {
      throw new Error(`seed ${seed}, run ${run}: ${String(error)}\n${JSON.stringify(text)}`, {
        cause: error,
      });
    }
    const took = performance.now() - started;
    slowest = Math.max(slowest, took);
    if (took > longestMilliseconds) {
      throw new Error(`seed ${seed}, run ${run}: ${took} ms for\n${JSON.stringify(text)}`);
    }
  }
  return { runs, seed, read, refused: runs - read, refusals, slowestMilliseconds: slowest };
}

/** How many things were refused in this text; throws if anything but a proper refusal comes out. */
function readOne(text: string, chance: Chance): number {
  try {
    if (/^lasers:/mu.test(text) || chance.next() < 0.05)
      mustBeFinite(readDrawer([{ text, file: 'fuzz.yaml' }]), 'drawer');
    else mustSurvive(readLaunch(text, 'fuzz.yaml'));
    return 0;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    if (error.parts.length === 0) throw new Error('a refusal that refuses nothing');
    for (const { where, what, mend } of error.parts) {
      if (!/^fuzz\.yaml:\d+:\d+( \S.*)?$/u.test(where)) throw new Error(`no place: ${JSON.stringify(where)}`);
      if (what.trim() === '' || !/^[A-Z].*\.$/u.test(mend))
        throw new Error(`half a refusal: ${what}; ${mend}`);
      if (/\p{Cc}|undefined|NaN|\[object/u.test(where + what + mend))
        throw new Error(`not for people: ${what}; ${mend}`);
    }
    return error.parts.length;
  }
}

function mustSurvive(launch: Launch): void {
  mustBeFinite(launch, 'launch');
  const again = readLaunch(writeLaunch(launch), 'again.yaml');
  if (!isDeepStrictEqual(again, launch)) {
    throw new Error(`written and read again it is another launch:\n${writeLaunch(launch)}`);
  }
}

function mustBeFinite(value: unknown, place: string): void {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${place} is ${value}`);
  if (value === undefined) throw new Error(`${place} is undefined`);
  if (typeof value !== 'object' || value === null) return;
  for (const [key, inner] of Object.entries(value)) mustBeFinite(inner, `${place}.${key}`);
}
