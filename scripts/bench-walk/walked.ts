import { play, practiceBench, type Tracked } from '@coreward/bench';
import { seededUniform } from '@coreward/optics';
import type { BenchToWalk } from './bench-file.ts';
import { type Policy, policies } from './policies.ts';

/** How a way to walk did on many benches. Medians over all of them; what never happened counts as never. */
export interface WalkRow {
  readonly policy: string;
  readonly suite: string;
  readonly n: number;
  /** Screws turned until the light is at 95 % of the achievable peak and stays there; null: half or more never got there. */
  readonly opsToStay: number | null;
  /** The same for the first touch, be it only in passing; null likewise. */
  readonly opsToFirst: number | null;
  readonly opsAtStop: number;
  /** What the clock says, s, and how many readings were typed, when the light is there to stay; null likewise. */
  readonly seconds: number | null;
  readonly typed: number | null;
  /** Shares whose final light is below 95 % and 90 %. */
  readonly fail95: number;
  readonly fail90: number;
  readonly finalMedian: number;
  readonly finalP5: number;
  /** Of those who claim 95 %, the share that is there; null: nobody claims. */
  readonly doneCalibration: number | null;
}

/** The same with what is told in a table only. */
export interface ToldRow extends WalkRow {
  /** Share that claims 95 %. */
  readonly claimed: number;
  readonly isBaseline: boolean;
}

/** Any number will do; noise must not be the one the benches were drawn with. */
const noiseSeed = 77_000_000;
/** Between the seeds of two streams, so that no bench of one gets the noise of another bench. */
const nextStream = 1_000_003;
const wanted = 0.95;

/**
 * @param name one of {@link policies}
 * @param stream another whole number draws other noise on the same benches
 */
export function walked(name: string, suite: string, benches: readonly BenchToWalk[], stream = 0): ToldRow {
  const policy = policies[name];
  if (policy === undefined) throw new Error(`no way to walk is called ${name}`);
  const runs = benches.map((bench) => runOf(policy, bench, stream));
  const n = runs.length;
  const finals = runs.map(({ final }) => final);
  const claiming = runs.filter(({ claims }) => claims);
  const medianOf = (figure: (run: Run) => number) => quantile(runs.map(figure), 0.5);
  const share = (of: readonly unknown[]) => of.length / n;
  return {
    policy: name,
    suite,
    n,
    opsToStay: finiteOrNull(medianOf(({ stay }) => stay)),
    opsToFirst: finiteOrNull(medianOf(({ first }) => first)),
    opsAtStop: medianOf(({ turned }) => turned),
    seconds: finiteOrNull(medianOf(({ seconds }) => seconds)),
    typed: finiteOrNull(medianOf(({ typed }) => typed)),
    fail95: share(finals.filter((final) => final < wanted)),
    fail90: share(finals.filter((final) => final < 0.9)),
    finalMedian: quantile(finals, 0.5),
    finalP5: quantile(finals, 0.05),
    claimed: share(claiming),
    doneCalibration: rightOf(claiming),
    isBaseline: policy.isBaseline,
  };
}

const rightOf = (claiming: readonly Run[]): number | null =>
  claiming.length === 0 ? null : claiming.filter(({ final }) => final >= wanted).length / claiming.length;

/** The fields that machines are told, and no other. */
export const jsonOf = ({ claimed, isBaseline, ...row }: ToldRow): WalkRow => row;

interface Run {
  readonly claims: boolean;
  readonly final: number;
  readonly turned: number;
  readonly stay: number;
  readonly first: number;
  readonly seconds: number;
  readonly typed: number;
}

const never = Number.POSITIVE_INFINITY;

function runOf(policy: Policy, { seed, hidden, known }: BenchToWalk, stream: number): Run {
  const bench = practiceBench(hidden, seededUniform(noiseSeed + stream * nextStream + seed));
  const { track, verdict, turned } = play(bench, policy.begin(known));
  const staying: Tracked | undefined = track[track.findLastIndex(({ share }) => share < wanted) + 1];
  const first = track.findIndex(({ touched }) => touched >= wanted);
  return {
    claims: verdict.claims95,
    final: track.at(-1)!.share,
    turned,
    stay: staying === undefined ? never : track.indexOf(staying),
    first: first < 0 ? never : first,
    seconds: staying?.seconds ?? never,
    typed: staying?.typed ?? never,
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
