/** What reads the light of a walk, and what becomes of the walk when that changes. */
import type { ReadingUnit } from '../instrument/reading.ts';
import type { TurnContext } from './live-turn.ts';
import type { WalkMeter } from './reading-text.ts';
import type { WalkNow } from './replay.ts';
import type { WalkProcedureName, WalkSession } from './session.ts';
import type { Screw, WalkAnswer } from './step.ts';
import type { WalkAct, WalkReads } from './walk-act.ts';

/** The meter of a walk whose instrument counts so; null: steps brighter and dimmer are no measure. */
export function meterCounting(unit: ReadingUnit): WalkMeter | null {
  switch (unit) {
    case 'W':
      return 'power';
    case 'V':
      return 'voltage';
    case 'A':
      return 'current';
    case 'relative':
      return 'relative';
    case 'step':
      return null;
  }
}

/** A walk as it stands after its acts. */
export interface ReadSession extends WalkSession {
  /** What reads the light now. */
  readonly reads: WalkReads;
  /** Which of the acts each answer is. */
  readonly answeredBy: readonly number[];
}

/**
 * The session of a walk: the answers that count, and what reads the light. Readings of two instruments do not compare: where
 * another one reads, or the unit changes, the walk begins anew from where the screws stand. Typing for an instrument, and back
 * to it, changes nothing.
 */
export function sessionOf(
  { procedure, reads }: { readonly procedure: WalkProcedureName; readonly reads: WalkReads },
  acts: readonly WalkAct[],
): ReadSession {
  let now = reads;
  let device = reads.instrument;
  let floor = reads.floor;
  let answered: readonly { readonly answer: WalkAnswer; readonly at: number }[] = [];
  for (const [at, act] of acts.entries()) {
    switch (act.do) {
      case 'answer':
        answered = [...answered, { answer: act.answer, at }];
        break;
      case 'undo':
        answered = answered.slice(0, -1);
        break;
      case 'reads': {
        const isOther =
          act.reads.meter !== now.meter ||
          (device !== null && act.reads.instrument !== null && act.reads.instrument !== device);
        now = act.reads;
        device = now.instrument ?? device;
        if (!act.anew && !isOther) break;
        device = now.instrument;
        floor = now.floor;
        answered = [];
      }
    }
  }
  return {
    // by eye nothing is measured that a model could use
    procedure: now.meter === 'eye' ? 'taught' : procedure,
    meter: now.meter,
    floor,
    answers: answered.map(({ answer }) => answer),
    answeredBy: answered.map(({ at }) => at),
    reads: now,
  };
}

/**
 * What the live turn of the step that is asked is judged by; null: nothing is asked.
 *
 * @param noise standard deviation of a single reading of the instrument, as far as it is known
 * @param turned the screw that was turned last since the step was asked; null: nobody knows, as on a real bench
 */
export function turnContext(
  { ask, moves, floor }: WalkNow,
  session: WalkSession,
  noise: number | null,
  turned: Screw | null = null,
): TurnContext | null {
  if (ask === null) return null;
  const peaks = moves.flatMap(({ answer }) =>
    answer.outcome === 'did' && answer.highest !== undefined ? [answer.highest] : [],
  );
  return { step: ask.step, floor: floor ?? session.floor, peak: peaks.at(-1) ?? null, noise, turned };
}
