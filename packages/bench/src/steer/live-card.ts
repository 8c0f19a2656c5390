import { writeQuantity, writeValue } from '../units/write.ts';
import type { Screw, Sense, WalkAxis, WalkMirror } from '../walk/step.ts';
import type { CardReading } from './card-offset/card-reading.ts';
import type { MeanSpot } from './card-offset/mean-spot.ts';
import type { CardOffset } from './exact-turns.ts';
import type { SteerMove } from './replay.ts';
import { type ScrewSenses, screwKey, senseOf, senseThat, type WentTo } from './senses.ts';
import type { SteerPlan } from './steer-plan.ts';
import type { SteerAnswer } from './step.ts';

/** Which of the two cards: before the lens, or behind the far mirror. */
export type SteerCard = 'near' | 'far';

/** What to turn on one axis while a camera looks at a card. */
export interface LiveTurn {
  readonly axis: WalkAxis;
  /** m, and its standard uncertainty; right and up are positive. */
  readonly offset: number;
  readonly uncertainty: number;
  /** Which screw brings the spots together on this card; + is the way that was learned. Null: they lie together. */
  readonly turn: { readonly screw: Screw; readonly way: Sense; readonly goes: WentTo } | null;
}

/** Spots nearer than this many doubts lie over each other. */
const together = 1;

/** The senses as they were learned last. */
export function learnedSenses(moves: readonly SteerMove[]): ScrewSenses {
  return new Map(
    moves.flatMap(({ step, answer }) =>
      step.kind === 'sense' && answer.outcome === 'went'
        ? [[screwKey(step.screw), senseThat(answer.to)] as const]
        : [],
    ),
  );
}

/** The beam whose spot moves on a card as its mirror is turned: the other one's is kept. */
export function movingBeam(
  plan: Pick<SteerPlan, 'serving' | 'layout' | 'cards'>,
  card: SteerCard,
): 'forward' | 'reverse' {
  return plan.cards[card] < mirrorAt(plan, servedBy(plan, card)) ? 'forward' : 'reverse';
}

/**
 * Which screw to turn, and which way, so that the spots on one card come together: each card by the mirror that serves it,
 * in turn, which always converges.
 *
 * @source geometry, derived here: a mirror at D turned by + adds to the offset at z in proportion to D − z
 */
export function liveTurns(
  { offset, uncertainty }: Pick<CardReading, 'offset' | 'uncertainty'>,
  card: SteerCard,
  plan: Pick<SteerPlan, 'serving' | 'layout' | 'cards'>,
  senses: ScrewSenses,
): readonly [LiveTurn, LiveTurn] {
  const mirror = servedBy(plan, card);
  const adds: Sense = mirrorAt(plan, mirror) > plan.cards[card] ? 1 : -1;
  const of = (axis: WalkAxis): LiveTurn => {
    const key = axis === 'horizontal' ? 'x' : 'y';
    const size = offset[key];
    const doubt = uncertainty[key];
    if (Math.abs(size) <= together * doubt) return { axis, offset: size, uncertainty: doubt, turn: null };
    const screw: Screw = { mirror, axis };
    const wanted: Sense = size > 0 ? -1 : 1;
    const way: Sense = wanted * adds * senseOf(senses, screw) > 0 ? 1 : -1;
    // the forward spot goes where it is wanted; where the reverse one moves, it comes to meet it
    const goes = wanted * (movingBeam(plan, card) === 'forward' ? 1 : -1);
    const sides = axis === 'horizontal' ? (['right', 'left'] as const) : (['up', 'down'] as const);
    return { axis, offset: size, uncertainty: doubt, turn: { screw, way, goes: sides[goes > 0 ? 0 : 1] } };
  };
  return [of('horizontal'), of('vertical')];
}

/** One axis in words: how far, and what to turn. */
export function liveTurnWords(
  { axis, offset, uncertainty, turn }: LiveTurn,
  moves: 'forward' | 'reverse',
): string {
  const sides = axis === 'horizontal' ? ['to the right', 'to the left'] : ['above', 'below'];
  if (turn === null) {
    return `${axis === 'horizontal' ? 'Sideways' : 'In height'} they lie together, within ${writeValue(uncertainty, 'length', 2, 'mm')}.`;
  }
  const side = sides[offset > 0 ? 0 : 1];
  const spot = moves === 'forward' ? 'the laser’s spot' : 'the reverse spot';
  const way = turn.way > 0 ? 'the way you learned as +' : 'back, against the way you learned as +';
  return `${lengthText(offset, uncertainty)} ${side}. ${turn.screw.mirror}, ${axis} screw, ${way}: ${spot} goes ${turn.goes}.`;
}

/** A size with its doubt: `0.420 mm ± 0.030 mm`. */
const lengthText = (length: number, uncertainty: number): string =>
  writeQuantity(
    { value: Math.abs(length), uncertainty, shape: 'normal', origin: 'measured' },
    'length',
    'mm',
  );

/** A reading of a card in words: `0.42 mm ± 0.03 mm to the right and 0.11 mm ± 0.02 mm above`. */
export function cardOffsetText(offset: CardOffset, uncertainty: CardOffset): string {
  const of = (key: 'x' | 'y', sides: readonly [string, string]): string => {
    return `${lengthText(offset[key], uncertainty[key])} ${sides[offset[key] > 0 ? 0 : 1]}`;
  };
  return `${of('x', ['to the right', 'to the left'])} and ${of('y', ['above', 'below'])}`;
}

/** How far a kept spot wandered, where a pixel is so long. */
export const wanderText = ({ scatter }: MeanSpot, pixel: number): string =>
  writeValue(scatter * pixel, 'length', 2, 'mm');

/** Both cards as a camera has read them, as the answer of a steer; their doubt is the rms of all four offsets'. */
export function offsetsByCamera(
  near: CardReading,
  far: CardReading,
): SteerAnswer & { readonly outcome: 'read' } {
  const doubts = [near, far].flatMap(({ uncertainty: { x, y } }) => [x, y]);
  const readingError = Math.sqrt(doubts.reduce((sum, one) => sum + one ** 2, 0) / doubts.length);
  return { outcome: 'read', offsets: { near: near.offset, far: far.offset }, readingError };
}

const servedBy = ({ serving }: Pick<SteerPlan, 'serving'>, card: SteerCard): WalkMirror =>
  card === 'near' ? serving.nearCard : serving.farCard;

const mirrorAt = ({ layout: { geometry } }: Pick<SteerPlan, 'layout'>, mirror: WalkMirror): number =>
  mirror === 'M1' ? geometry.farMirror : geometry.nearMirror;
