import type { WalkAsk, WalkEstimate, WalkProcedure, WalkRemark, WalkVerdict } from './procedure.ts';
import type { WalkAnswer, WalkStep } from './step.ts';

/** One step that was answered. */
export interface WalkMove {
  readonly step: WalkStep;
  readonly answer: WalkAnswer;
  /** The reading it brought, floor included, in the unit of the meter; null: none. */
  readonly reading: number | null;
  /** What was believed before it was done. */
  readonly estimate: WalkEstimate;
  readonly remarks: readonly WalkRemark[];
}

/** Where a walk stands. */
export interface WalkNow {
  /** What is asked next; null: nothing is left to do. */
  readonly ask: WalkAsk | null;
  /** How the climb ended; null: it goes on. What is asked behind it belongs to what comes after a walk. */
  readonly verdict: WalkVerdict | null;
  /** In the order in which it was done. */
  readonly moves: readonly WalkMove[];
  /** Highest reading of light so far, floor included; null: none was taken. */
  readonly best: number | null;
  /** The newest reading of light; null: none was taken. */
  readonly last: number | null;
  /** The reading with the beam blocked; null: it was not taken. */
  readonly floor: number | null;
  readonly estimate: WalkEstimate;
}

/** What is known before anything was asked. */
const nothingKnown: WalkEstimate = {
  missing: null,
  missingLow: null,
  missingHigh: null,
  horizontalShare: null,
  ridge: null,
};

/**
 * Where a walk stands after these answers: a procedure is begun anew and told each of them. Pure, as the procedures are;
 * answers behind the end of everything are left out.
 */
export function replayWalk(
  begin: () => WalkProcedure,
  comesAfter: (verdict: WalkVerdict) => WalkProcedure,
  answers: readonly WalkAnswer[],
): WalkNow {
  let procedure = begin();
  let verdict: WalkVerdict | null = null;
  let heard = procedure.next();
  const moves: WalkMove[] = [];
  for (let told = 0; ; ) {
    if (heard.done === true) {
      if (verdict !== null) break;
      verdict = heard.value;
      procedure = comesAfter(verdict);
      heard = procedure.next();
      continue;
    }
    const answer = answers[told];
    if (answer === undefined) break;
    const { step, estimate, remarks } = heard.value;
    moves.push({ step, answer, reading: readingIn(answer), estimate, remarks });
    heard = procedure.next(answer);
    told += 1;
  }
  const ask = heard.done === true ? null : heard.value;
  return {
    ask,
    verdict,
    moves,
    ...readingsOf(moves),
    estimate: verdict?.estimate ?? ask?.estimate ?? nothingKnown,
  };
}

function readingsOf(moves: readonly WalkMove[]): Pick<WalkNow, 'best' | 'last' | 'floor'> {
  const ofLight = moves.flatMap(({ step, reading }) =>
    step.kind === 'floor' || reading === null ? [] : [reading],
  );
  const dark = moves.findLast(({ step, reading }) => step.kind === 'floor' && reading !== null);
  return {
    best: ofLight.length === 0 ? null : Math.max(...ofLight),
    last: ofLight.at(-1) ?? null,
    floor: dark?.reading ?? null,
  };
}

/** The reading that an answer brings: the highest seen, or else the one that stands; null: none. */
export function readingIn(answer: WalkAnswer): number | null {
  return answer.outcome === 'did' ? (answer.highest ?? answer.standing ?? null) : null;
}
