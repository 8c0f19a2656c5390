/**
 * What a walk asks of a hand, one thing at a time, and what the hand answers.
 *
 * M1 is the mirror far from the collimator, M2 the one before it. A screw's sense is +1 for the way its first quarter
 * turn was taught; nothing here knows which way that is on the bench. Angles of screws are in turns.
 */

/** The mirror far from the collimator, and the one before it. */
export type WalkMirror = 'M1' | 'M2';
/** Which way a screw moves the spot: sideways, or up and down. */
export type WalkAxis = 'horizontal' | 'vertical';

/** One of the four screws. */
export interface Screw {
  readonly mirror: WalkMirror;
  readonly axis: WalkAxis;
}

/** +1: the way the screw was turned when its sense was learned; -1: back. */
export type Sense = 1 | -1;

/** One thing that is asked of the hand. Readings are in the unit of the meter, whatever that is. */
export type WalkStep =
  /** Block the beam and note what the meter still says. */
  | { readonly kind: 'floor' }
  /** Hand off the screws; note the reading as it stands. */
  | { readonly kind: 'stand'; readonly why: 'start' | 'compare' | 'drift' | 'after-power' }
  /** Rock the screw slowly through the peak, note the highest reading, stop at it. */
  | {
      readonly kind: 'sweep';
      readonly screw: Screw;
      /** How far to look either side, turns; null: until the light has fallen off on both sides. */
      readonly reach: number | null;
      /** What the sweep is for, which decides what is said beforehand. */
      readonly why: 'climb' | 'bring-back' | 'undo' | 'polish' | 'after-focus' | 'after-power';
    }
  /** Turn the screw until the reading has fallen to the target. */
  | {
      readonly kind: 'detune';
      readonly screw: Screw;
      readonly sense: Sense;
      /** The reading to stop at, floor included, in the unit of the meter. */
      readonly target: number;
      /** The same as a fraction of the last peak above the floor. */
      readonly fraction: number;
    }
  /** Turn the screw by a counted angle; the light may be gone afterwards. */
  | {
      readonly kind: 'turn';
      readonly screw: Screw;
      /** Signed by the screw's sense, turns. */
      readonly turns: number;
      /** The screw went the other way last: nothing happens at first. */
      readonly reverses: boolean;
    }
  /** Turn the focus thread by a counted angle, + drives the lens away from the fibre. */
  | { readonly kind: 'focus'; readonly turns: number }
  /** Turn the screw to both sides where the reading has halved, then stand in the middle (a plateau). */
  | { readonly kind: 'middle'; readonly screw: Screw; readonly target: number }
  /** Coil the fibre or put a drop of index-matching liquid on its bare cladding; note the reading before and after. */
  | { readonly kind: 'strip' };

/** What the hand answers. A step whose answer carries a number needs it, see {@link answerOf}. */
export type WalkAnswer =
  | {
      readonly outcome: 'did';
      /** Highest reading seen while a sweep passed the peak. */
      readonly highest?: number;
      /** The reading with the hand off the screw; of a detuning, which asks for none, what a live meter came to. */
      readonly standing?: number;
      /** For `strip`: the reading before it; `standing` is the one after. */
      readonly before?: number;
    }
  /** It was tried and the light did not do what was announced. */
  | { readonly outcome: 'did-not-work' }
  | { readonly outcome: 'skipped' };

/** Which number the answer to a step must carry; null: none. */
export function answerOf(step: WalkStep): 'highest' | 'standing' | 'before-and-standing' | null {
  switch (step.kind) {
    case 'floor':
    case 'stand':
      return 'standing';
    case 'sweep':
      return 'highest';
    case 'middle':
      return 'standing';
    case 'strip':
      return 'before-and-standing';
    case 'detune':
    case 'turn':
    case 'focus':
      return null;
  }
}

/** Whether a screw is turned by it, so that the light is another one afterwards. */
export const turnsAScrew = ({ kind }: WalkStep): boolean =>
  kind !== 'floor' && kind !== 'stand' && kind !== 'strip';
