/**
 * Ways to walk that are known from benches and books and stand here only to be compared with: nothing but the dark reading
 * is told to them. How exactly each goes is our own reading of it.
 */
import type {
  Known,
  Screw,
  WalkAnswer,
  WalkAsk,
  WalkEstimate,
  WalkProcedure,
  WalkStep,
  WalkVerdict,
} from '@coreward/bench';

type Part<T> = Generator<WalkAsk, T, WalkAnswer>;
type Told = Pick<Known, 'floor'>;
type Axis = Screw['axis'];

const axes: readonly Axis[] = ['horizontal', 'vertical'];
const near = (axis: Axis): Screw => ({ mirror: 'M2', axis });
const far = (axis: Axis): Screw => ({ mirror: 'M1', axis });

const nothing: WalkEstimate = {
  missing: null,
  missingLow: null,
  missingHigh: null,
  horizontalShare: null,
  ridge: null,
};
const end: WalkVerdict = { reason: 'hand-limit', claims95: false, estimate: nothing, remarks: [] };

/** Most screws that are turned: as for the walk that is taught. */
const budget = 160;

/** What is remembered on the way. */
interface Hand {
  readonly floor: number;
  turned: number;
  /** Highest light of the last sweep. */
  peak: number;
}

const newHand = ({ floor }: Told): Hand => ({ floor: floor ?? 0, turned: 0, peak: 0 });
/** ln of the light in a reading; the least that counts is as in every walk. */
const lnLight = ({ floor }: Hand, reading: number) =>
  Math.log(Math.max(reading - floor, 0.3 * floor, Number.MIN_VALUE));

function* ask(hand: Hand, step: WalkStep): Part<WalkAnswer> {
  if (step.kind !== 'stand') hand.turned += 1;
  return yield { step, estimate: nothing, remarks: [], remaining: null };
}

function* sweep(hand: Hand, screw: Screw, reach: number | null = null): Part<number> {
  const answer = yield* ask(hand, { kind: 'sweep', screw, reach, why: 'climb' });
  const seen = lnLight(hand, answer.outcome === 'did' ? (answer.highest ?? 0) : 0);
  hand.peak = Math.exp(seen);
  return seen;
}

function* stand(hand: Hand): Part<number> {
  const answer = yield* ask(hand, { kind: 'stand', why: 'start' });
  return lnLight(hand, answer.outcome === 'did' ? (answer.standing ?? 0) : 0);
}

function* detune(hand: Hand, screw: Screw, sense: 1 | -1, fraction: number): Part<void> {
  yield* ask(hand, {
    kind: 'detune',
    screw,
    sense,
    fraction,
    target: hand.floor + fraction * hand.peak,
  });
}

/** M2 until a sweep brings less than a tenth more, at most six sweeps. */
function* peakNear(hand: Hand): Part<number> {
  let before = yield* sweep(hand, near('horizontal'));
  for (let i = 1; i < 6; i++) {
    const seen = yield* sweep(hand, near(axes[i % 2]!));
    const isDone = i >= 2 && seen - before < Math.log(1.1);
    before = seen;
    if (isDone) break;
  }
  return before;
}

/** One knob after the other, live, until three rounds of all four have brought less than a hundredth: what is done untaught. */
export function* coordWalk(told: Told): WalkProcedure {
  const hand = newHand(told);
  let best = Number.NEGATIVE_INFINITY;
  for (let idle = 0; idle < 3 && hand.turned < budget; ) {
    let seen = Number.NEGATIVE_INFINITY;
    for (const axis of axes)
      for (const screw of [far(axis), near(axis)]) seen = Math.max(seen, yield* sweep(hand, screw));
    idle = seen - best < 0.01 ? idle + 1 : 0;
    best = Math.max(best, seen);
  }
  return end;
}

/** The walk without peak hold: what stands after a sweep is compared, in three rounds of smaller steps. */
export function* standingWalk(told: Told): WalkProcedure {
  const hand = newHand(told);
  yield* peakNear(hand);
  for (const fraction of [0.1, 0.1 ** 0.5, 0.1 ** 0.25]) {
    for (const axis of axes) {
      let sense: 1 | -1 = 1;
      let before = yield* stand(hand);
      for (let reversals = 0; hand.turned < budget; ) {
        yield* detune(hand, far(axis), sense, fraction);
        yield* sweep(hand, near(axis));
        const now = yield* stand(hand);
        if (reversals === 2) break;
        if (now <= before + 0.01) {
          sense = sense === 1 ? -1 : 1;
          reversals += 1;
        }
        before = now;
      }
    }
  }
  for (const axis of axes) yield* sweep(hand, near(axis));
  return end;
}

/** Counted turns of M1 beside its place, turns; each round half of it. */
const firstTurn = 1 / 16;
/** A turn of M1 by count is followed by M2 this far either side, turns. */
const lookFor = (turns: number) => 0.25 + 1.5 * Math.abs(turns);
const rulerFraction = 0.1;

/**
 * Three places of M1 along each axis, M2 peaked at each, a parabola through their logarithms, and on to its vertex; some rounds of it.
 * M1 goes by counted turns that get finer, or by the light as a ruler of equal steps.
 */
export function* parabolaWalk(told: Told, how: 'by-count' | 'by-light'): WalkProcedure {
  const hand = newHand(told);
  let middle = yield* peakNear(hand);
  for (let round = 0; round < (how === 'by-count' ? 2 : 4); round++) {
    for (const axis of axes) {
      const go = function* (steps: number): Part<number> {
        if (how === 'by-count') {
          const turns = (steps * firstTurn) / 2 ** round;
          yield* ask(hand, { kind: 'turn', screw: far(axis), turns, reverses: false });
          return yield* sweep(hand, near(axis), lookFor(turns));
        }
        let seen = Math.log(hand.peak);
        for (let left = Math.abs(steps); left > 1e-3; left -= 1) {
          // where √(−ln) is a ruler, a part of a step is that part of it
          const fraction = rulerFraction ** (Math.min(1, left) ** 2);
          yield* detune(hand, far(axis), steps > 0 ? 1 : -1, fraction);
          seen = yield* sweep(hand, near(axis));
        }
        return seen;
      };
      const above = yield* go(1);
      const below = yield* go(-2);
      const bend = 2 * middle - above - below;
      const vertex = bend > 0 ? (above - below) / (2 * bend) : above > below ? 3 : -3;
      middle = yield* go(Math.min(3, Math.max(-3, vertex)) + 1);
    }
  }
  for (const axis of axes) yield* sweep(hand, near(axis));
  return end;
}
