import { Refusal } from '../refusal.ts';
import { answerOf, type WalkAnswer, type WalkStep } from './step.ts';

/**
 * Sees to it that an answer carries what its step asks for.
 *
 * @throws {Refusal} with the reading that is missing, or is none
 */
export function checkAnswer(step: WalkStep, answer: WalkAnswer): void {
  if (answer.outcome !== 'did') return;
  const needs = answerOf(step);
  const wanted =
    needs === null ? [] : needs === 'before-and-standing' ? (['before', 'standing'] as const) : [needs];
  for (const name of wanted) {
    const reading = answer[name];
    if (reading !== undefined && Number.isFinite(reading) && reading >= 0) continue;
    throw new Refusal({
      where: `walk: ${words[name]}`,
      what: reading === undefined ? 'there is no reading' : `\`${reading}\` is no reading of light`,
      mend: 'Write what the meter shows, such as `2.4`; if it shows nothing, choose that it did not work.',
    });
  }
}

const words = {
  highest: 'the highest reading seen',
  standing: 'the reading as it stands',
  before: 'the reading before',
} as const;
