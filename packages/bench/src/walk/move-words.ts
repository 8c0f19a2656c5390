/** A walk in the fewest words: for the list of moves and for the bench book. What is asked stands in walk sentences. */
import { writeValue } from '../units/write.ts';
import { readingText, type WalkMeter } from './reading-text.ts';
import type { WalkNow } from './replay.ts';
import type { WalkProcedureName } from './session.ts';
import type { Screw, WalkAnswer, WalkStep } from './step.ts';
import type { WalkAct } from './walk-act.ts';

/** How the beginning of a walk stands in the bench book. @param instrument name of what reads; null: a hand types it */
export function walkBeginningText(
  {
    procedure,
    meter,
    seed,
  }: {
    readonly procedure: WalkProcedureName;
    readonly meter: WalkMeter;
    readonly seed: number | null;
  },
  instrument: string | null,
): string {
  const how = procedure === 'ridge' ? 'by calculation' : 'by rule, as it is taught';
  const by = meter === 'eye' || instrument !== null ? `, ${readsText(meter, instrument)}` : '';
  return seed === null ? `walk begun, ${how}${by}` : `practice walk begun, ${how}${by}, seed ${seed}`;
}

/** What reads the light: `read by photodiode`. */
export const readsText = (meter: WalkMeter, instrument: string | null): string =>
  instrument !== null ? `read by ${instrument}` : meter === 'eye' ? 'by eye' : 'readings typed';

/** How a change of what reads stands in the bench book. @param isAnew the walk begins anew from where the screws stand */
export const walkReadsText = (meter: WalkMeter, instrument: string | null, isAnew: boolean): string =>
  `${readsText(meter, instrument)}${isAnew ? ', begun anew from where the screws stand' : ''}`;

/** How an answer, or one taken back, stands in the bench book; `now` is where the walk stood before it. */
export function walkActText(now: WalkNow, act: Exclude<WalkAct, { do: 'reads' }>, meter: WalkMeter): string {
  if (act.do === 'answer') return now.ask === null ? '' : moveText(now.ask.step, act.answer, meter);
  const last = now.moves.at(-1);
  return last === undefined ? 'undone' : `undone: ${moveText(last.step, last.answer, meter)}`;
}

/** A step and what was answered: `M2 horizontal, highest: 2.13 µW`. */
export function moveText(step: WalkStep, answer: WalkAnswer, meter: WalkMeter): string {
  const what = stepWords(step, meter);
  if (answer.outcome === 'skipped') return `${what}: skipped`;
  if (answer.outcome === 'did-not-work') return `${what}: did not work`;
  const read = (reading: number): string => (meter === 'eye' ? 'seen' : readingText(reading, meter));
  if (step.kind === 'strip' && answer.before !== undefined && answer.standing !== undefined)
    return `${what}: ${read(answer.before)}, then ${read(answer.standing)}`;
  const reading = answer.highest ?? answer.standing;
  return reading === undefined ? what : `${what}: ${read(reading)}`;
}

/** What a step does, without its why. */
export function stepWords(step: WalkStep, meter: WalkMeter): string {
  switch (step.kind) {
    case 'floor':
      return 'beam blocked';
    case 'stand':
      return 'hands off';
    case 'sweep':
      return `${screwWords(step.screw)}, highest`;
    case 'detune':
      return meter === 'eye'
        ? `${screwWords(step.screw)}, until clearly dimmer`
        : `${screwWords(step.screw)}, down to ${readingText(step.target, meter)}`;
    case 'turn':
      return `${screwWords(step.screw)}, by ${writeValue(step.turns, 'turns')}`;
    case 'focus':
      return `focus, by ${writeValue(step.turns, 'turns')}`;
    case 'middle':
      return `${screwWords(step.screw)}, middle of the plateau`;
    case 'strip':
      return 'cladding light taken off, before and after';
  }
}

/** `M2 horizontal` */
export const screwWords = ({ mirror, axis }: Screw): string => `${mirror} ${axis}`;
