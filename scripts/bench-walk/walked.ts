import { type Known, play, practiceBench, type WalkProcedure } from '@coreward/bench';
import { seededUniform } from '@coreward/optics';
import type { BenchToWalk } from './bench-file.ts';

/** How a way to walk did on many benches. Medians over all of them; what never happened counts as never. */
export interface WalkRow {
  readonly policy: string;
  readonly suite: string;
  readonly n: number;
  /** Screws turned until the light is at 95 % of the achievable peak and stays there; null: half or more never got there. */
  readonly opsToStay: number | null;
  readonly opsToFirst: number | null;
  readonly opsAtStop: number;
  readonly seconds: number;
  readonly typed: number;
  /** Shares whose final light is below 95 % and 90 %. */
  readonly fail95: number;
  readonly fail90: number;
  readonly finalMedian: number;
  readonly finalP5: number;
  /** Share that claims 95 %, and of those the share that is there; null: nobody claims. */
  readonly claimed: number;
  readonly doneCalibration: number | null;
}

/** Any number will do; noise must not be the one the benches were drawn with. */
const noiseSeed = 77_000_000;
/** Between the seeds of two streams, so that no bench of one gets the noise of another bench. */
const nextStream = 1_000_003;

/**
 * @param begin the walk, from what it is told
 * @param stream another whole number draws other noise on the same benches
 */
export function walked(
  policy: string,
  suite: string,
  begin: (known: Known) => WalkProcedure,
  benches: readonly BenchToWalk[],
  stream = 0,
): WalkRow {
  const runs = benches.map(({ seed, hidden, known }) => {
    const { shares, verdict, ...rest } = play(
      practiceBench(hidden, seededUniform(noiseSeed + stream * nextStream + seed)),
      begin(known),
    );
    const lastBelow = shares.findLastIndex((share) => share < 0.95);
    const first = shares.findIndex((share) => share >= 0.95);
    return {
      ...rest,
      claims: verdict.claims95,
      final: shares.at(-1)!,
      stay: lastBelow === shares.length - 1 ? Number.POSITIVE_INFINITY : lastBelow + 1,
      first: first < 0 ? Number.POSITIVE_INFINITY : first,
    };
  });
  const n = runs.length;
  const finals = runs.map(({ final }) => final);
  const claiming = runs.filter(({ claims }) => claims);
  const share = (of: readonly unknown[]) => of.length / n;
  return {
    policy,
    suite,
    n,
    opsToStay: finiteOrNull(
      quantile(
        runs.map(({ stay }) => stay),
        0.5,
      ),
    ),
    opsToFirst: finiteOrNull(
      quantile(
        runs.map(({ first }) => first),
        0.5,
      ),
    ),
    opsAtStop: quantile(
      runs.map(({ turned }) => turned),
      0.5,
    ),
    seconds: quantile(
      runs.map(({ seconds }) => seconds),
      0.5,
    ),
    typed: quantile(
      runs.map(({ typed }) => typed),
      0.5,
    ),
    fail95: share(finals.filter((final) => final < 0.95)),
    fail90: share(finals.filter((final) => final < 0.9)),
    finalMedian: quantile(finals, 0.5),
    finalP5: quantile(finals, 0.05),
    claimed: share(claiming),
    doneCalibration:
      claiming.length === 0 ? null : claiming.filter(({ final }) => final >= 0.95).length / claiming.length,
  };
}

const finiteOrNull = (x: number): number | null => (Number.isFinite(x) ? x : null);

/** Between neighbours the straight line; beside something that never happened, never. */
function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = share * (sorted.length - 1);
  const [low, high] = [sorted[Math.floor(at)]!, sorted[Math.ceil(at)]!];
  return low === high ? low : low + (at - Math.floor(at)) * (high - low);
}
