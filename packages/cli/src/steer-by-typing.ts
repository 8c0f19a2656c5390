import {
  type HiddenBench,
  paceWords,
  practisedSteer,
  replaySteer,
  type SteerAnswer,
  type SteerNow,
  type SteerPlan,
  type StepWords,
  steerAnswerIn,
  steerAnswerWords,
  steerMeterWords,
  steerRemarkWords,
  steerStepWords,
} from '@coreward/bench';
import { type KeptFile, notOfIt } from './kept-file.ts';
import type { Shell } from './shell.ts';
import { readSteerLine, steerKeys } from './steer-line.ts';
import { wrapHanging } from './text/wrap.ts';

/** A bench that only exists here, and the seed of its hand. */
export interface PracticeSteer {
  readonly hidden: HiddenBench;
  readonly seed: number;
}

/** The line that takes the answer before it back. */
const undone = '"undo"';

/**
 * Asks until nothing is left to ask, the lines end, or somebody has had enough; without a keyboard a practice steer goes on by
 * itself.
 *
 * @param path of the file it is kept in, for refusals
 * @throws {Refusal} if a line of it is none of a steer
 */
export async function steeredByTyping(
  plan: SteerPlan,
  practice: PracticeSteer | null,
  { kept, path }: { readonly kept: KeptFile; readonly path: string },
  shell: Shell,
): Promise<SteerNow> {
  const answers = [...answersIn(kept, path)];
  // who goes on has read them
  const mustRead = practice === null && kept.before.length === 0;
  const say = (text: string): void => shell.talk(`${wrapHanging(text, '   ', shell.width).join('\n')}\n`);
  const give = async (answer: SteerAnswer): Promise<void> => {
    await kept.add(JSON.stringify(answer));
    answers.push(answer);
  };
  const lines = shell.lines()[Symbol.asyncIterator]();
  try {
    if (mustRead && !(await hasRead(lines, say))) return replaySteer(plan, answers);
    for (;;) {
      const now = replaySteer(plan, answers);
      if (now.ask === null) return now;
      const { step } = now.ask;
      const practised = practice === null ? null : practisedSteer(practice.hidden, practice.seed, plan, now);
      shell.talk(asked(plan, now, practised !== null, shell));
      // at a screw that is learned the cards show where it has taken the spot
      const seen = step.kind === 'sense' ? practised?.turned : practised?.seen;
      if (seen != null && (step.kind === 'sense' || step.kind === 'offsets'))
        say(`The cards show: ${steerAnswerWords(step, { outcome: 'read', offsets: seen })}.`);
      const next = await lines.next();
      if (next.done === true && practised === null) return now;
      const line =
        next.done === true ? ({ do: 'hand' } as const) : readSteerLine(next.value, step, practised !== null);
      switch (line.do) {
        case 'quit':
          return now;
        case 'say':
          say(line.text);
          break;
        case 'undo':
          if (answers.length === 0) say('Nothing was answered that could be undone.');
          else {
            await kept.add(undone);
            answers.pop();
          }
          break;
        case 'hand': {
          const hand = practised?.hand ?? null;
          if (hand === null) break;
          await give(hand);
          say(`The hand: ${steerAnswerWords(step, hand)}`);
          break;
        }
        case 'answer':
          await give(line.answer);
      }
    }
  } finally {
    // a keyboard that is still listened to would keep the program alive
    await lines.return?.();
  }
}

/** Nothing is asked of reverse light before its cautions were read. */
async function hasRead(lines: AsyncIterator<string>, say: (text: string) => void): Promise<boolean> {
  for (;;) {
    say('Type `read` once you have read the two steps above: what follows sends light backwards. q stops.');
    const next = await lines.next();
    if (next.done === true || next.value.trim().toLowerCase() === 'q') return false;
    if (next.value.trim().toLowerCase() === 'read') return true;
  }
}

function answersIn({ before }: KeptFile, path: string): readonly SteerAnswer[] {
  const answers: SteerAnswer[] = [];
  for (const { line, text } of before) {
    if (text === undone) {
      answers.pop();
      continue;
    }
    const answer = steerAnswerIn(text);
    if (answer === null) throw notOfIt(path, line, 'it says nothing that was done in a steer');
    answers.push(answer);
  }
  return answers;
}

/** What was noticed, the step, what to mind with it, and what may be typed. */
function asked(plan: SteerPlan, { ask, moves }: SteerNow, practised: boolean, { width }: Shell): string {
  if (ask === null) return '';
  const { step, remarks } = ask;
  const { order, mind } = steerStepWords(step);
  const pace = step.kind === 'raster' ? [paceWords(plan, step.boxes), steerMeterWords(plan.meter)] : [];
  const keys = `(${steerKeys(step, practised)})`;
  const remarked = remarks.slice(0, 1).map(steerRemarkWords);
  return [
    '',
    ...remarked.flatMap(({ order: say, mind: why }: StepWords) =>
      [say, ...why].flatMap((text) => wrapHanging(text, '    ', width)),
    ),
    ...wrapHanging(order, `${moves.length + 1}. `.padStart(4), width),
    ...[...mind, ...pace, keys].flatMap((text) => wrapHanging(text, '    ', width)),
    '',
  ].join('\n');
}
