import { readFileSync } from 'node:fs';
import type { HiddenBench, Known } from '@coreward/bench';

/** One bench of a file of simulated benches, as it is written (packages/bench/reference/walk/README.md). */
interface BenchRow {
  readonly seed: number;
  readonly wavelength: number;
  readonly typed: {
    readonly focal: number;
    readonly modeRadius: number;
    readonly d2: number;
    readonly L: number;
    readonly mirrorRadPerTurn: number;
    readonly verticalGainRatio: number;
  };
  readonly H: HiddenBench['curvature'];
  readonly start: HiddenBench['start'];
  readonly sigma: number;
  readonly floor: number;
  readonly driftPerAction: number;
  readonly lash: HiddenBench['lash'];
  readonly addTurn: number;
  readonly multTurn: number;
  readonly fingerTurn: number;
}

/** A bench to walk on: what is hidden, and what the walk is told. */
export interface BenchToWalk {
  readonly seed: number;
  readonly hidden: HiddenBench;
  readonly known: Known;
}

/** A turn that is stopped by the meter misses by this share of it, 1σ (our own assumption, no source). */
const detuneFactor = 0.1;

/** Benches of a file whose seeds lie between two, ends included. */
export function benchesOf(path: string, [from, to]: readonly [number, number]): readonly BenchToWalk[] {
  const rows: readonly BenchRow[] = JSON.parse(readFileSync(path, 'utf8'));
  return rows.filter(({ seed }) => seed >= from && seed <= to).map(benchOf);
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
