/** What is said to a hand while the meter is live: few words, for somebody who looks up for a moment. */
import { screwWords } from './move-words.ts';
import { readingText, type WalkMeter } from './reading-text.ts';
import type { WalkStep } from './step.ts';
import { wayWords } from './step-sentence.ts';
import type { TurnNow } from './turn-sign.ts';

/** What a turn says. */
export interface TurnSaid {
  /** A few words in large. */
  readonly short: string;
  /** More, where something is amiss; null: nothing is. */
  readonly mend: string | null;
  /** Why the answer is not ready, for a hand that takes it all the same; null: it is ready, or there is none. */
  readonly insteadOf: string | null;
}

/** The words of a turn as it stands. */
export function turnSaid(now: TurnNow, step: WalkStep, meter: WalkMeter): TurnSaid {
  return { ...signSaid(now, step, meter), insteadOf: notReadyFor(now, step, meter) };
}

/** Why an answer is not ready. */
function notReadyFor(
  { sign, take, isReady, shown, goal }: TurnNow,
  step: WalkStep,
  meter: WalkMeter,
): string | null {
  if (take === null || isReady || shown === null) return null;
  const shows = `The meter shows ${readingText(shown, meter)} now`;
  if (sign === 'block') return 'The light has not fallen.';
  if (sign === 'let-through') return 'It is no more than the dark reading.';
  if (sign === 'still' || sign === 'seek')
    return step.kind === 'sweep' ? `${shows}: nothing has moved it yet.` : `${shows}.`;
  if (sign === 'settling' || sign === 'resting') return `${shows}, and is not at rest.`;
  if (goal === null) return `${shows}.`;
  const to = readingText(goal, meter);
  return step.kind === 'sweep'
    ? `${shows}, the best of this turn was ${to}: the screw is not back there.`
    : `${shows}, to come to is ${to}.`;
}

function signSaid(
  { sign, goal, wrongScrew }: TurnNow,
  step: WalkStep,
  meter: WalkMeter,
): Omit<TurnSaid, 'insteadOf'> {
  const to = goal === null ? '' : readingText(goal, meter);
  const screw = 'screw' in step ? screwWords(step.screw) : 'the screw';
  switch (sign) {
    case 'listening':
      return plain('Listening to the meter …');
    case 'gap':
      return {
        short: 'No readings: the step waits.',
        mend: 'It goes on by itself when the instrument is back. Leave the screws as they stand until then.',
      };
    case 'too-much':
      return {
        short: 'Too much light for this meter.',
        mend: 'Lower its gain or the laser power until it counts again, then begin anew from here: what was read before no longer compares.',
      };
    case 'covered':
      return {
        short: 'Dark all at once.',
        mend: `Is something in the beam, or the camera covered? Clear it, and go on. If you turned far: back${to === '' ? '' : ` until ${to}`}.`,
      };
    case 'dark':
      return {
        short: 'Dark: no more than with the beam blocked.',
        mend: 'Is something in the beam, or the camera covered? If not, turn farther, to both sides; if nothing comes, press “Did not work”.',
      };
    case 'still':
      return {
        short: 'The reading does not follow.',
        mend: `Keep turning through the slack. If it stays so: is it ${screw} that you turn?`,
      };
    case 'not-back':
      return {
        short: 'The light does not come back.',
        mend: `Is it ${screw} that you turn, and was it the right screw before? Look farther to both sides; if nothing comes, press “Did not work”.`,
      };
    case 'settling':
      return plain('Hands off: it settles …');
    case 'resting':
      return plain('At rest: take it.');
    case 'block':
      return plain('Block the beam.');
    case 'seek':
      return plain(step.kind === 'sweep' ? 'Turn slowly.' : 'Turn.');
    case 'rising':
      return plain('It rises: go on, past the top.');
    case 'other-way':
      return plain(`It falls this way: back, past ${to} and beyond.`);
    case 'past':
      return plain(`Past the peak: back until ${to}.`);
    case 'nearing':
      return plain(`It comes back: on until ${to}.`);
    case 'passed-again':
      return plain(`You passed it again: turn round, back until ${to}.`);
    case 'falls-on':
      return plain(`It falls on: turn round, back until ${to} and beyond.`);
    case 'back-at-peak':
      return plain('At the peak: hands off.');
    case 'lower':
      return plain(`Turn on, down to ${to}.`);
    case 'at-target':
      return plain('There: stop, and take it.');
    case 'too-low':
      return plain(`Too far: back until ${to}.`);
    case 'wrong-way':
      return {
        short: 'It rises: is this the way?',
        mend: `Asked is ${screw}${'sense' in step ? `, ${wayWords(step.sense)}` : ''}. If you turn it the other way, turn round; if not, go on: behind the top it falls, down to ${to}.`,
      };
    case 'back-too-far':
      return {
        short: `Back too far: turn round, down to ${to}.`,
        mend: 'Slack comes first: nothing happens until the screw has turned through it.',
      };
    case 'over-top':
      return {
        short: 'Over the top: this is the far side.',
        mend: `Turn round, back over the top, and down to ${to} on the side you came from.`,
      };
    case 'wrong-screw':
      return {
        short: `You turned ${wrongScrew === null ? 'another screw' : screwWords(wrongScrew)}; asked is ${screw}.`,
        mend: 'Turn it back by as much, and go on with the one that is asked.',
      };
    case 'let-through':
      return {
        short: 'Let the beam through.',
        mend: 'No more arrives than with the beam blocked. If it is through: was it blocked for the dark reading? If not, undo that; if it was, nothing arrives yet: take it.',
      };
    case 'first-edge':
      return plain(`To one side, down to ${to}.`);
    case 'second-edge':
      return plain(`Now to the other side, through the light and down to ${to}.`);
    case 'to-middle':
      return plain('Back to the middle between the two.');
    case 'by-count':
      return plain('By count: the meter may show little.');
  }
}

const plain = (short: string): Omit<TurnSaid, 'insteadOf'> => ({ short, mend: null });
