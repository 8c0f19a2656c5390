import { type BothLimits, type ExposureLimit, governingLimit, OutOfRange } from '@coreward/optics';
import { Refusal } from '../refusal.ts';
import type { LimitQuestion } from './limit-question.ts';

/** A question about a limit and what both sets say to it. */
export interface LimitAnswer {
  readonly question: LimitQuestion;
  readonly both: BothLimits<ExposureLimit>;
}

/**
 * The limits of both sets, and which governs.
 *
 * @throws {Refusal} outside what the tables cover
 */
export function answerLimit(question: LimitQuestion): LimitAnswer {
  try {
    return { question, both: governingLimit(question.exposure) };
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    const { where, what, mend } = error;
    const place = where in question.places ? question.places[where as keyof LimitQuestion['places']] : where;
    throw new Refusal({ where: place, what, mend });
  }
}
