import { statedBench } from '../forecast/stated-bench.ts';
import type { Launch } from '../launch/launch.ts';
import { afterWalk } from './after-walk.ts';
import { type Known, knownOf } from './known.ts';
import { middleWalk } from './middle-walk.ts';
import type { WalkProcedure } from './procedure.ts';
import type { WalkMeter } from './reading-text.ts';
import { replayWalk, type WalkMove, type WalkNow } from './replay.ts';
import { ridgeWalk } from './ridge-walk.ts';
import type { WalkAnswer } from './step.ts';
import { taughtWalk } from './taught-walk.ts';

/** By the layout and a model, or as a good teacher teaches it, without either. */
export type WalkProcedureName = 'ridge' | 'taught';

/** How a walk is led, and what was answered so far. The same session is always at the same step. */
export interface WalkSession {
  readonly procedure: WalkProcedureName;
  readonly meter: WalkMeter;
  /** What the meter shows with the beam blocked; null: the walk asks. */
  readonly floor: number | null;
  readonly answers: readonly WalkAnswer[];
}

/** What a launch says about walking it. */
export interface WalkPlan {
  readonly known: Known;
  /** Whether cladding light may reach the far end, so that its reading may not be of the core alone. */
  readonly withStrip: boolean;
  /** A few modes are guided: the total hides light that went into the wrong one. */
  readonly fewModes: boolean;
}

/** Cladding light at the far end as a share of the guided, above which it is tried for. @source our choice: a tenth of what a meter can tell */
const claddingToTry = 1e-3;

/** @throws {Refusal} if the launch has no lens, or fewer than two mirrors with screws */
export function walkPlan(launch: Launch): WalkPlan {
  const known = knownOf(launch);
  const { budget, taker } = statedBench(launch);
  return {
    // in W, as a meter of power shows it
    known: { ...known, forecastPeak: launch.laser.power.value * budget.output },
    withStrip: budget.claddingAtFarEnd > claddingToTry * budget.output,
    fewModes: !known.manyModes && taker.set !== null && taker.set.modes.length > 1,
  };
}

/** Where a session stands. */
export function walkNow(plan: WalkPlan, { procedure, meter, floor, answers }: WalkSession): WalkNow {
  return replayWalk(
    () => procedures[procedure](knownTo(meter, plan.known, floor)),
    (verdict) => afterWalk(verdict, plan.withStrip && meter !== 'eye'),
    answers,
  );
}

/** By eye there is no floor to be taken off; only a meter of power can be held against the forecast. */
const knownTo = (meter: WalkMeter, known: Known, floor: number | null): Known => ({
  ...known,
  floor: meter === 'eye' ? 0 : floor,
  forecastPeak: meter === 'power' ? known.forecastPeak : null,
});

const procedures: Readonly<Record<WalkProcedureName, (known: Known) => WalkProcedure>> = {
  // a plateau has no ridge: the layout says so beforehand
  ridge: (known) => (known.manyModes ? middleWalk(known) : ridgeWalk(known)),
  taught: taughtWalk,
};

/** What an eye tells of a peak against the one before it. */
export type Brightness = 'brighter' | 'same' | 'dimmer';

/** A step of brightness that an eye tells for certain, as a factor. @source our choice; only its sign is used */
const eyeStep = 1.25;

/** A count in place of a reading: how bright a peak is against the last one; the first is 1. */
export function readingByEye(moves: readonly WalkMove[], seen: Brightness): number {
  const before = moves.findLast(({ reading }) => reading !== null)?.reading ?? 1;
  return seen === 'same' ? before : seen === 'brighter' ? before * eyeStep : before / eyeStep;
}
