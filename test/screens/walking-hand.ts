import {
  hiddenBenchOf,
  type PracticeBench,
  practiceBench,
  readLaunch,
  type Screw,
} from '../../packages/bench/src/index.ts';
import { seededUniform } from '../../packages/optics/src/index.ts';

/** A simulated bench with a meter that is read while somebody turns its screws. */
export interface LiveBench {
  readonly bench: PracticeBench;
  /** What the meter shows, W; its noise is its own. */
  readonly look: () => number;
  /** The reading at the achievable peak, W, and that with the beam blocked. */
  readonly peak: number;
  readonly floor: number;
  /** Lets so much time pass, ms. */
  readonly wait: (time: number) => Promise<void>;
}

const pause = (time: number): Promise<void> => new Promise((done) => setTimeout(done, time));

/**
 * @param seed draws what is hidden, and how the screws were left by an eye
 * @param wait the clock of the hand, if it is not that of the machine
 */
export function liveBench(text: string, seed: number, wait = pause): LiveBench {
  const random = seededUniform(seed);
  const hidden = hiddenBenchOf(readLaunch(text, 'launch'), random, 'steered-by-eye');
  const bench = practiceBench(hidden, random);
  const peak = hidden.peakReading;
  return { bench, look: bench.watcher(seed + 1), peak, floor: hidden.floor * peak, wait };
}

/** A hand turns so far in one go, turns, and so often, ms: through half the width of a peak in half a second. */
const [stride, pace] = [0.0015, 20] as const;
/** Where the light does not follow, as in slack, it turns so many times faster; */
const inSlack = 3;
/** light follows that changes by more than this share. */
const follows = 0.002;
/** Farther than this no hand looks, turns. */
const farthest = 0.5;

/** Turns a screw bit by bit, as a hand does, until it has seen enough. Slack is turned through like everything else. */
async function turn(
  { bench, wait }: LiveBench,
  screw: Screw,
  sense: 1 | -1,
  isEnough: (share: number) => boolean,
): Promise<void> {
  let before = Number.NaN;
  for (let turned = 0; turned < farthest; ) {
    const share = bench.trueShare();
    if (isEnough(share)) return;
    const by = Math.abs(share - before) < follows * share ? inSlack * stride : stride;
    before = share;
    bench.turn(screw, sense * by);
    turned += by;
    await wait(pace);
  }
}

/** A fall that the eye sees, and a place that is as good as the top. */
const [fallen, atTop] = [0.7, 0.992] as const;

/** Rocks a screw through its peak, to both sides, and comes back to it. An experienced hand: it knows the top when it sees it. */
export async function rock(live: LiveBench, screw: Screw): Promise<void> {
  let best = 0;
  const falls = (share: number): boolean => {
    best = Math.max(best, share);
    return share < fallen * best;
  };
  await turn(live, screw, 1, falls);
  let top = 0;
  await turn(live, screw, -1, (share) => {
    top = Math.max(top, share);
    best = Math.max(best, share);
    return top > 0.97 * best && share < fallen * top;
  });
  let before = 0;
  await turn(live, screw, 1, (share) => {
    const isOver = share < before && share > 0.9 * best;
    before = share;
    return share > atTop * best || isOver;
  });
}

/** Turns a screw until the meter has fallen to a reading, W. */
export const turnDown = (live: LiveBench, screw: Screw, sense: 1 | -1, target: number): Promise<void> =>
  // the meter shows what the focus leaves of the share of the four screws
  turn(live, screw, sense, (share) => share * live.bench.trueFocus() <= (target - live.floor) / live.peak);

/** What an instruction asks of a hand, read as a person reads it. */
export type Asked =
  | { readonly do: 'block' | 'hands off' | 'after' }
  | { readonly do: 'rock'; readonly screw: Screw }
  | { readonly do: 'turn down'; readonly screw: Screw; readonly sense: 1 | -1; readonly target: number };

const prefixes: Readonly<Record<string, number>> = { W: 1, mW: 1e-3, µW: 1e-6, nW: 1e-9, pW: 1e-12 };

export function askedIn(instruction: string): Asked {
  const [, mirror = '', axis = ''] = /(M[12]) (horizontal|vertical)/u.exec(instruction) ?? [];
  const screw = { mirror, axis } as Screw;
  const [, number, unit = ''] = /fallen to ([\d.]+) (\S+)\.$/u.exec(instruction) ?? [];
  if (number !== undefined) {
    const sense = instruction.includes('onwards') ? 1 : -1;
    return { do: 'turn down', screw, sense, target: Number(number) * (prefixes[unit] ?? Number.NaN) };
  }
  if (instruction.startsWith('Rock')) return { do: 'rock', screw };
  if (instruction.startsWith('Block')) return { do: 'block' };
  return { do: instruction.startsWith('Take your hands off') ? 'hands off' : 'after' };
}
