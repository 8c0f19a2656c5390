/** What is said to a hand while the meter is live: few words, for somebody who looks up for a moment. */
import { screwWords } from './move-words.ts';
import { readingText, type WalkMeter } from './reading-text.ts';
import type { WalkStep } from './step.ts';
import type { TurnNow } from './turn-now.ts';

/** What a turn says. */
export interface TurnSaid {
  /** A few words in large. */
  readonly short: string;
  /** More, where something is amiss; null: nothing is. */
  readonly mend: string | null;
}

/** The words of a turn as it stands. */
export function turnSaid({ sign, goal }: TurnNow, step: WalkStep, meter: WalkMeter): TurnSaid {
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
    case 'back-at-peak':
      return plain('At the peak: hands off.');
    case 'lower':
      return plain(`Turn on, down to ${to}.`);
    case 'at-target':
      return plain('There: stop.');
    case 'too-low':
      return plain(`Too far: back until ${to}.`);
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

const plain = (short: string): TurnSaid => ({ short, mend: null });
