import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { type HiddenBench, type Known, Refusal } from '@coreward/bench';
import { type BenchRow, faultsOf } from './bench-row.ts';

/** A bench to walk on: what is hidden, and what the walk is told. */
export interface BenchToWalk {
  readonly seed: number;
  readonly hidden: HiddenBench;
  readonly known: Known;
}

/** A turn that is stopped by the meter misses by this share of it, 1σ (our own assumption, no source). */
const detuneFactor = 0.1;
/** Refusals of one file that are told; the rest is counted. */
const toldAtOnce = 5;

/**
 * Benches of a file whose seeds lie between two, ends included.
 *
 * @throws {Refusal} if it cannot be read, or says of a bench what no bench can be
 */
export function benchesOf(path: string, seeds: readonly [number, number]): readonly BenchToWalk[] {
  return benchesIn(textOf(path), basename(path), seeds);
}

function textOf(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    throw new Refusal({
      where: '--benches',
      what: `\`${path}\` cannot be read`,
      mend: 'Write the path of a file that is there, such as `packages/bench/reference/walk/benches-V.json`.',
    });
  }
}

/** @param file its name, for refusals */
export function benchesIn(
  text: string,
  file: string,
  [from, to]: readonly [number, number],
): readonly BenchToWalk[] {
  const rows = rowsIn(text, file);
  const refused = rows.flatMap((row, i) => faultsOf(row, `${file}: bench ${i + 1}`));
  if (refused.length > 0) {
    const more = refused.length - toldAtOnce;
    const last = refused[toldAtOnce - 1];
    throw new Refusal(
      more <= 0 || last === undefined
        ? refused
        : [
            ...refused.slice(0, toldAtOnce - 1),
            { ...last, what: `${last.what}, and ${more} more places are wrong` },
          ],
    );
  }
  const chosen = (rows as readonly BenchRow[]).filter(({ seed }) => seed >= from && seed <= to);
  if (chosen.length === 0) {
    throw new Refusal({
      where: '--seeds',
      what: `no bench of ${file} has a seed from ${from} to ${to}`,
      mend: 'Leave --seeds out to walk on all of them.',
    });
  }
  return chosen.map(benchOf);
}

function rowsIn(text: string, file: string): readonly unknown[] {
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch (error) {
    throw new Refusal({
      where: file,
      what: `it is not JSON (${(error as Error).message})`,
      mend: 'Give a file that holds a list of benches, as packages/bench/reference/walk/README.md tells.',
    });
  }
  if (Array.isArray(read) && read.length > 0) return read;
  throw new Refusal({
    where: file,
    what: Array.isArray(read) ? 'its list of benches is empty' : 'it holds no list of benches',
    mend: 'Put the benches between `[` and `]`, as packages/bench/reference/walk/README.md tells.',
  });
}

function benchOf(row: BenchRow): BenchToWalk {
  // a meter with a unit of its own, so that nothing can be guessed from the peak being 1
  const peakReading = 10 ** ((row.seed % 7) - 4) * (1 + (row.seed % 5));
  const { typed } = row;
  const k = typed.mirrorRadPerTurn;
  const vertical = 2 * typed.verticalGainRatio;
  return {
    seed: row.seed,
    hidden: {
      curvature: row.H,
      shape: { kind: 'peak' },
      start: row.start,
      noise: row.sigma,
      floor: row.floor,
      drift: row.driftPerAction,
      lash: row.lash,
      hands: {
        countFactor: row.multTurn,
        countAdds: row.addTurn,
        finger: row.fingerTurn,
        detuneFactor,
      },
      peakReading,
      focus: null,
      screws: null,
    },
    known: {
      wavelength: row.wavelength,
      modeRadius: typed.modeRadius,
      focalLength: typed.focal,
      farMirror: typed.d2 + typed.L,
      nearMirror: typed.d2,
      tiltPerTurn: [k, k, k, k],
      verticalGain: [vertical, vertical],
      manyModes: false,
      floor: row.floor * peakReading,
      forecastPeak: null,
      focusThread: null,
    },
  };
}
