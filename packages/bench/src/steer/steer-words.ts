import { cameraOffsetError } from '../practice/draw-hidden.ts';
import { writeDecibel, writeQuantity, writeValue } from '../units/write.ts';
import type { Screw } from '../walk/step.ts';
import type { CardOffset } from './exact-turns.ts';
import type { SteerFacts } from './procedure.ts';
import { planRaster } from './raster.ts';
import { learningTurn } from './senses.ts';
import { type SteerPlan, startsDark } from './steer-plan.ts';
import type { SteerAnswer, SteerRemark, SteerStep, SteerVerdict } from './step.ts';

/** What is said of a step: one line to follow, and what to mind with it. */
export interface StepWords {
  readonly order: string;
  readonly mind: readonly string[];
}

const mirrorWords = { M1: 'M1, far from the fibre', M2: 'M2, the one before the lens' } as const;

/** `M2, vertical screw`. */
const theScrew = ({ mirror, axis }: Screw): string => `${mirror}, ${axis} screw`;

const turnsText = (turns: number): string => `${writeValue(Math.abs(turns), 'number', 2)} turn`;
const wayText = (turns: number): string =>
  turns > 0 ? 'the way you learned as +' : 'back, against the way you learned as +';

/** The sentences of a step. */
export function steerStepWords(step: SteerStep): StepWords {
  switch (step.kind) {
    case 'sense': {
      const { mirror, axis } = step.screw;
      return {
        order: `${theScrew(step.screw)}: turn it ${writeValue(learningTurn, 'number')} turn clockwise, seen from the knob.`,
        mind: [
          `${mirrorWords[mirror]}. Clockwise is + from now on.`,
          `Look downstream, the way the laser’s light goes. Which way does the laser’s spot on the card before the lens go, ${axis === 'horizontal' ? 'left or right' : 'up or down'}?`,
          'Leave the screw where it is now.',
        ],
      };
    }
    case 'offsets':
      return {
        order:
          step.pass === 1
            ? 'Read both cards: how far does the laser’s spot lie from the reverse spot?'
            : 'Read both cards again.',
        mind: [
          'Look downstream on both cards. Right and up are positive, left and down negative.',
          'Take the middle of each spot. Block one beam, then the other, if they cannot be told apart.',
        ],
      };
    case 'turn': {
      const { screw, turns, reverses } = step;
      return {
        order: `${theScrew(screw)}, ${turnsText(turns.value)} ${wayText(turns.value)}.`,
        mind: [
          `Known to ± ${turnsText(turns.uncertainty)}, from the reading of the cards and the mount.`,
          ...(reverses
            ? ['The screw turns round: nothing happens at first. Count from where the spot moves.']
            : []),
        ],
      };
    }
    case 'light':
      return {
        order: 'Switch the reference light off, unplug it, and look for the laser’s light at the far end.',
        mind: [
          'Laser at alignment power, the far end clamped before a detector or into a stop; no eye on its axis.',
          'Take both cards away: the light must reach the lens.',
          'Light means: clearly more than with the beam blocked, three times as much or more.',
        ],
      };
    case 'raster':
      return rasterWords(step);
  }
}

function rasterWords({ move, lines, boxes }: SteerStep & { readonly kind: 'raster' }): StepWords {
  const horizontal = (turns: number) => `M2, horizontal screw, ${turnsText(turns)} ${wayText(turns)}`;
  const vertical = (turns: number) => `M2, vertical screw, ${turnsText(turns)} ${wayText(turns)}`;
  switch (move.do) {
    case 'corner':
      return {
        order: `To the corner of the search: ${vertical(move.vertical)}, then ${horizontal(move.horizontal)}.`,
        mind: [
          `${lines} lines follow${boxes === 2 ? ', now in twice the box' : ''}. Every one passes where the light may be.`,
        ],
      };
    case 'line':
      return {
        order: `${move.stepFirst === 0 ? '' : `${vertical(move.stepFirst)}; then `}${horizontal(move.horizontal)}, slowly, with an eye on the meter.`,
        mind: [`Line ${move.line + 1} of ${lines}. Stop the moment the meter shows anything.`],
      };
    case 'back':
      return {
        order: `Back to the middle: ${vertical(move.vertical)}, then ${horizontal(move.horizontal)}.`,
        mind: ['Nothing was found in this box.'],
      };
  }
}

/** How fast a line may be turned. */
export function paceWords({ raster }: SteerFacts, boxes: 1 | 2): string {
  const { fastest, time } = planRaster(raster, boxes);
  return `No faster than ${writeValue(fastest, 'number', 2)} turn a second, for a meter that shows a new reading every ${writeValue(raster.updateTime, 'time')}: at least ${writeValue(time, 'time', 2)} for all lines, a minute or two by hand.`;
}

/** What was noticed, and what to do about it. */
export function steerRemarkWords({ card, axis }: SteerRemark): StepWords {
  const which = card === 'near' ? 'the card before the lens' : 'the card behind M1';
  return {
    order: 'Swap the mirrors, or learn the screws again.',
    mind: [
      `The ${axis} offset on ${which} grew twice running. Either M1 and M2 are taken for each other, or a screw was learned the wrong way round.`,
      'Check which mirror the laser’s light meets first: that is M1. Then go through all four screws again, below.',
    ],
  };
}

/** How a steer ended, and what to do now. */
export function steerVerdictWords(verdict: SteerVerdict): StepWords {
  switch (verdict) {
    case 'light':
      return {
        order: 'There is light at the far end. The steer is done.',
        mind: ['The walk takes it from here to the peak.'],
      };
    case 'found':
      return {
        order: 'The search has found light. The steer is done.',
        mind: ['Leave the screws where they are. The walk takes it from here to the peak.'],
      };
    case 'dark':
      return {
        order: 'Nothing was found. Do not search farther: something else is wrong.',
        mind: [
          'Is the beam on the middle of the lens? An offset that is lost, too, cannot be found by angle: read both cards again.',
          'Is the focus near? Compare the reverse beam’s size at the lens and at the laser: it must hardly grow.',
          'Is the fibre open? Send the reference light through it: does it come out of the launch end as bright as before?',
          'Is the meter on the right range, uncovered, and set for the laser’s wavelength?',
          'Then start the steer anew.',
        ],
      };
  }
}

/** What the walk will begin with, and what would make it better; a forecast is never a bare figure. */
export function startWords(plan: SteerPlan): readonly string[] {
  const { start, better, reverse, cards, meter } = plan;
  const begins = `The walk will begin ${levelWords(start.median, 'at ')} of its peak (median; in the worst tenth of cases below ${writeDecibel(Math.max(start.worstTenth, faintest))}). Light will show ${shareWords(start.shareSeen)}, on a meter that shows ${writeDecibel(meter.seen)} of it.`;
  const dark = startsDark(start)
    ? ['As likely as not the start is dark: then a search line by line follows.']
    : [];
  const helps = better.map(({ by, start: then }) => {
    const brings = `would bring ${levelWords(then.median, '')}, and light ${shareWords(then.shareSeen)}.`;
    return by === 'camera'
      ? `Offsets read by a camera, to ${writeValue(cameraOffsetError, 'length')}, ${brings}`
      : `Cards twice as far apart, ${writeValue(2 * (cards.far - cards.near), 'length', 2)}, ${brings}`;
  });
  const longer = start.median < 0.5 ? ['A lens of longer focal length makes it worse, not better.'] : [];
  return [begins, ...dark, ...helps, ...longer, ...reverseWords(reverse)];
}

/**
 * A millionth of the peak. Below it the spot's own shape says nothing any more: scattered light and the dark of a meter
 * are more (common practice, no source).
 */
const faintest = 1e-6;

const levelWords = (ofPeak: number, at: string): string =>
  ofPeak < faintest ? `below ${writeDecibel(faintest)}` : `${at}${writeDecibel(ofPeak)}`;

/** A count of simulated starts promises neither always nor never. */
function shareWords(share: number): string {
  if (share > 0.98) return 'nearly always';
  if (share < 0.02) return 'hardly ever';
  return `in about ${writeValue(share, 'fraction', 2)} of cases`;
}

function reverseWords(reverse: SteerPlan['reverse']): readonly string[] {
  if (reverse === null) {
    return ['No reference source is written in this launch: its wander cannot be counted.'];
  }
  if (reverse.modes === null) {
    return [
      'At the reference wavelength the fibre guides so many modes that the reverse spot is speckle: take the middle of it.',
    ];
  }
  if (reverse.modes === 1) return [];
  const { offset, angle } = reverse.wander;
  return [
    `The reference light runs in up to ${reverse.modes} modes, so the reverse spot wanders by ${writeValue(offset, 'length', 2, 'mm')} and ${writeValue(angle, 'angle', 2)} (rms, each axis) whenever the fibre moves; this is counted. Move the fibre, read several times, and take the mean.`,
  ];
}

/** Which mirror serves which card for those who turn by eye, without counting. */
export function servingWords({ serving }: SteerPlan): string {
  const { nearCard, farCard, errorRatio } = serving;
  const other = nearCard === 'M1' ? 'M2' : 'M1';
  return `By eye, without counting: bring the spots together with ${nearCard} on the card before the lens, with ${farCard} on the card behind M1, in turn. Each round leaves ${writeValue(errorRatio, 'fraction', 2)} of the error. The other way round, ${other} for the card before the lens, it grows with every round.`;
}

/** What was answered, for the bench book. */
export function steerAnswerWords(step: SteerStep, answer: SteerAnswer): string {
  switch (answer.outcome) {
    case 'went':
      return `${step.kind === 'sense' ? theScrew(step.screw) : ''}: + moves the spot ${answer.to}`;
    case 'read':
      return `offsets before the lens ${offsetText(answer.offsets.near)}, behind M1 ${offsetText(answer.offsets.far)}${answer.readingError === undefined ? '' : `, by camera to ± ${writeValue(answer.readingError, 'length', 2, 'mm')}`}`;
    case 'light':
      return 'light at the far end';
    case 'dark':
      return step.kind === 'raster' ? 'nothing on this line' : 'no light at the far end';
    case 'did':
      return step.kind === 'turn'
        ? `${theScrew(step.screw)} turned by ${writeQuantity(step.turns, 'turns')}`
        : 'search: moved';
  }
}

/** Of a length below this nothing is said on a card, m. */
const leastOnCard = 1e-6;
const millimetres = (length: number): string =>
  writeValue(Math.abs(length) < leastOnCard ? 0 : length, 'length', 3, 'mm');
const offsetText = ({ x, y }: CardOffset): string => `${millimetres(x)} right, ${millimetres(y)} up`;
