import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { World } from './world.ts';

/** A clock that tests move, and chance that is the same on every run. */
export interface FakeWorld extends World {
  /** Lets time pass, ms. */
  readonly wait: (milliseconds: number) => void;
}

/** A world that begins at one moment and draws the same chance for the same seed. */
export function fakeWorld(seed = 'coreward'): FakeWorld {
  let time = Date.UTC(2026, 10, 25, 10, 0, 0);
  let draws = 0;
  return {
    now: () => new Date(time),
    wait: (milliseconds) => {
      time += milliseconds;
    },
    randomBytes: (count) =>
      createHash('shake256', { outputLength: count }).update(`${seed} ${draws++}`).digest(),
  };
}

/** A folder of its own for one test, gone after it. */
export async function inFolder<T>(work: (folder: string) => T | Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'coreward-book-'));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
