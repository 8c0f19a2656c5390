/** What is said to a hand at the bench: one sentence to do, and what to expect. */
import { writeValue } from '../units/write.ts';
import { screwWords } from './move-words.ts';
import { readingText, type WalkMeter } from './reading-text.ts';
import type { WalkStep } from './step.ts';

/** What to do, in one sentence, and what may surprise on the way. */
export interface StepSentence {
  readonly doThis: string;
  readonly expect: string | null;
  /** What the number is that the answer needs; null: none. */
  readonly asks: string | null;
}

/** The sentence of a step. M1 is the mirror far from the lens, M2 the one before it. */
export function stepSentence(step: WalkStep, meter: WalkMeter): StepSentence {
  const byEye = meter === 'eye';
  switch (step.kind) {
    case 'floor':
      return {
        doThis: 'Block the beam and note what the meter still shows.',
        expect: 'This dark reading is taken off every other.',
        asks: 'dark reading',
      };
    case 'stand':
      return {
        doThis:
          step.why === 'after-power'
            ? 'Raise the power if you mean to, wait a minute, hands off, and note the reading.'
            : step.why === 'start'
              ? 'Take your hands off the screws, let the beam through, and note the reading.'
              : 'Take your hands off the screws and note the reading.',
        expect: step.why === 'after-power' ? 'Its cautions come first: read “Raising the power”.' : null,
        asks: 'reading as it stands',
      };
    case 'sweep':
      return {
        doThis: `Rock ${screwWords(step.screw)} slowly through the peak, and stop at the top.`,
        expect: sweepExpects(step, byEye),
        asks: byEye ? 'the peak against the one before' : 'highest reading seen',
      };
    case 'detune':
      return {
        doThis: byEye
          ? `Turn ${screwWords(step.screw)} ${wayWords(step.sense)} until the light is clearly dimmer.`
          : `Turn ${screwWords(step.screw)} ${wayWords(step.sense)} until the meter has fallen to ${readingText(step.target, meter)}.`,
        expect: 'The light almost vanishes; M2 brings it back. At first the screw may turn through slack.',
        asks: null,
      };
    case 'turn':
      return {
        doThis: `Turn ${screwWords(step.screw)} by ${writeValue(step.turns, 'turns')}.`,
        expect: `The light may be gone: M2 brings it back, turned the other way.${step.reverses ? ' Nothing happens at first: keep turning.' : ''}`,
        asks: null,
      };
    case 'focus':
      return {
        doThis: `Turn the focus by ${writeValue(step.turns, 'turns')}.`,
        expect: 'The lens moves sideways a little, too: M2 is peaked again before anything is compared.',
        asks: null,
      };
    case 'middle':
      return {
        doThis: `Turn ${screwWords(step.screw)} to both sides until the meter has fallen to ${readingText(step.target, meter)}, and stand in the middle.`,
        expect: null,
        asks: 'reading in the middle',
      };
    case 'strip':
      return {
        doThis:
          'Note the reading; coil the bare fibre loosely or wet its bare cladding with matching liquid; note it again.',
        expect: 'What falls was cladding light and never in the core.',
        asks: 'reading after',
      };
  }
}

/** Which way a screw is turned, against how its sense was learned. */
export const wayWords = (sense: 1 | -1): string => (sense === 1 ? 'onwards' : 'back');

function sweepExpects({ why, reach }: Extract<WalkStep, { kind: 'sweep' }>, byEye: boolean): string {
  const far = reach === null ? '' : ` Look up to ${writeValue(reach, 'turns')} either side.`;
  switch (why) {
    case 'bring-back':
      return `The light comes back.${far}`;
    case 'undo':
      return `This undoes the step before.${far}`;
    case 'climb':
      return `Pass the peak on both sides${byEye ? '' : '; what counts is the highest reading'}.${far}`;
    case 'polish':
      return `Only a little is to be gained. Stop with the hand off the knob.${far}`;
    case 'after-focus':
    case 'after-power':
      return `It has moved a little.${far}`;
  }
}
