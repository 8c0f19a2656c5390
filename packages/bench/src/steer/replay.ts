import { Refusal } from '../refusal.ts';
import { type SteerFacts, steer } from './procedure.ts';
import { answers as isAnswer, type SteerAnswer, type SteerAsk, type SteerVerdict } from './step.ts';

/** One step that was answered. */
export interface SteerMove extends SteerAsk {
  readonly answer: SteerAnswer;
}

/** Where a steer stands. */
export interface SteerNow {
  /** What is asked next; null: it has ended. */
  readonly ask: SteerAsk | null;
  readonly verdict: SteerVerdict | null;
  /** In the order in which it was done. */
  readonly moves: readonly SteerMove[];
}

/** Where a steer stands after these answers; the same ones always lead to the same step, one fewer is an undo. */
export function replaySteer(facts: SteerFacts, answers: readonly SteerAnswer[]): SteerNow {
  const procedure = steer(facts);
  let heard = procedure.next();
  const moves: SteerMove[] = [];
  for (const answer of answers) {
    if (heard.done === true) break;
    if (!isAnswer(heard.value.step, answer)) {
      throw new Refusal({
        where: `steer: answer ${moves.length + 1}`,
        what: `\`${answer.outcome}\` answers no step of this kind`,
        mend: 'Start the steer anew.',
      });
    }
    moves.push({ ...heard.value, answer });
    heard = procedure.next(answer);
  }
  return heard.done === true
    ? { ask: null, verdict: heard.value, moves }
    : { ask: heard.value, verdict: null, moves };
}
