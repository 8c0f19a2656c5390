import type { WalkRemark } from './remark-words.ts';
import type { WalkAnswer, WalkStep } from './step.ts';

export type { WalkRemark } from './remark-words.ts';

/** What is believed at a moment of a walk, always with its doubt. */
export interface WalkEstimate {
  /** Fraction of the achievable peak that is still missing, central value; null while nothing is known. */
  readonly missing: number | null;
  /** Its 90 % interval; null while nothing is known. */
  readonly missingLow: number | null;
  readonly missingHigh: number | null;
  /** Share of the missing light that lies along the horizontal screws, 0 to 1; null: unknown. */
  readonly horizontalShare: number | null;
  /** The ridge coordinate of each axis with its standard uncertainty, in 1/e half-widths; null: no ridge is fitted. */
  readonly ridge: {
    readonly horizontal: { readonly value: number; readonly uncertainty: number };
    readonly vertical: { readonly value: number; readonly uncertainty: number };
  } | null;
}

/** How a walk ended. */
export interface WalkVerdict {
  /** Why it stopped: what was sought is reached, the hand can do no better, the budget is spent, or something else is wrong. */
  readonly reason: 'reached' | 'hand-limit' | 'budget' | 'something-else';
  /** Whether it is claimed that at least 95 % of the achievable peak is in. */
  readonly claims95: boolean;
  readonly estimate: WalkEstimate;
  readonly remarks: readonly WalkRemark[];
}

/** What a procedure says while it asks: the step, how many are likely to follow, and what it believes. */
export interface WalkAsk {
  readonly step: WalkStep;
  readonly estimate: WalkEstimate;
  /** What was newly noticed before this step. */
  readonly remarks: readonly WalkRemark[];
  /** What probably remains, this step included; null: cannot be said. */
  readonly remaining: WalkRemaining | null;
}

/** What of a walk probably remains until its verdict: nine of ten lie between the two of each. */
export interface WalkRemaining {
  /** Things that are asked. */
  readonly steps: readonly [number, number];
  /** By the clock of an unhurried hand, s. */
  readonly seconds: readonly [number, number];
}

/**
 * A walk as a procedure: it yields what to do and receives what the hand answered. It holds no clock and no chance, so
 * that the same answers always lead to the same step: a session is its list of answers, undo drops the last one, and
 * a restarted station replays them.
 */
export type WalkProcedure = Generator<WalkAsk, WalkVerdict, WalkAnswer>;
