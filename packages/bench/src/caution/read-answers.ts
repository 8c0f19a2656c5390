import { nearestWord } from '../document/nearest-word.ts';
import { shown } from '../document/shown.ts';
import type { Launch } from '../launch/launch.ts';
import { Refusal, type RefusalParts } from '../refusal.ts';
import { type Answers, nothingAnswered, withAnswer } from './answers.ts';
import { laserKey } from './laser-key.ts';
import { type QuestionName, questionNames } from './question-names.ts';
import { hazardQuestions } from './questions.ts';

/** Whether these are asked depends on the path and on other answers; an answer is taken either way. */
const alwaysTaken: readonly QuestionName[] = ['beam-height', 'interlock'];

/**
 * Answers as they were written, read for one launch. An id may be short, `highest-power`, or whole,
 * `green-module:highest-power`; whole ones about other lasers, or about what this launch does not ask, are left alone,
 * so that all that is kept may be handed in.
 *
 * @throws {Refusal} with every answer that cannot be taken
 */
export function readAnswers(launch: Launch, written: Readonly<Record<string, string>>): Answers {
  const key = laserKey(launch);
  const asked = hazardQuestions(launch).map(({ name }) => name);
  const names = [...new Set([...asked, ...alwaysTaken])];
  const refused: RefusalParts[] = [];
  let answers = nothingAnswered;
  for (const [id, text] of Object.entries(written)) {
    const colon = id.lastIndexOf(':');
    const isWhole = colon >= 0;
    if (isWhole && id.slice(0, colon) !== key) continue;
    const name = questionNames.find((one) => one === id.slice(colon + 1));
    if (name === undefined || !names.includes(name)) {
      if (isWhole && name !== undefined) continue;
      refused.push(notAsked(id, names));
      continue;
    }
    const outcome = withAnswer(answers, name, text, `answer ${id}`);
    if ('refused' in outcome) refused.push(outcome.refused);
    else answers = outcome.answers;
  }
  if (refused.length > 0) throw new Refusal(refused);
  return answers;
}

function notAsked(id: string, names: readonly QuestionName[]): RefusalParts {
  const near = nearestWord(id, names);
  return {
    where: `answer ${shown(id)}`,
    what: 'this is not asked about this launch',
    mend: near === null ? `Answer one of these: ${names.join(', ')}.` : `Write \`${near}\`.`,
  };
}
