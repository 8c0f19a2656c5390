import { normalFrom, seededUniform } from '@coreward/optics';
import type { Launch } from '../launch/launch.ts';
import type { CardSpots } from '../practice/card-spots.ts';
import type { HiddenBench } from '../practice/hidden-bench.ts';
import { type PracticeBench, practiceBench } from '../practice/practice-bench.ts';
import { hiddenBenchOf } from '../practice/practice-of-launch.ts';
import type { Screw, Sense } from '../walk/step.ts';
import type { CardOffset, Offsets } from './exact-turns.ts';
import type { SteerFacts } from './procedure.ts';
import { visibleRadius } from './raster.ts';
import type { SteerNow } from './replay.ts';
import { allScrews, learningTurn, screwKey } from './senses.ts';
import type { SteerAnswer, SteerStep } from './step.ts';

/** A practice bench after all that was done in a steer. */
export interface PractisedSteer {
  /** What the cards show before the step that is asked: the forward over the reverse spot. */
  readonly seen: Offsets | null;
  /** What they show after a hand has done that step. */
  readonly turned: Offsets | null;
  /** What a hand on this bench answers to it; null: nothing is asked. */
  readonly hand: SteerAnswer | null;
}

/** What a meter must show over its floor to be seen: three times the floor, itself included. */
const outOfFloor = 3;

/**
 * Does again on a practice bench what was done in a steer, and then the step that is asked. The same bench, seed and steps
 * give the same answers.
 *
 * @param seed decides the chance of hands and readings, and which way each screw turns
 */
export function practisedSteer(
  hidden: HiddenBench,
  seed: number,
  facts: SteerFacts,
  now: SteerNow,
): PractisedSteer {
  const random = seededUniform(seed);
  const bench = practiceBench(hidden, random);
  const ways = new Map<string, Sense>(allScrews.map((screw) => [screwKey(screw), random() < 0.5 ? 1 : -1]));
  const hand = handOn(bench, facts, random, (screw) => ways.get(screwKey(screw)) ?? 1);
  for (const { step } of now.moves) hand(step);
  const onCards = (): Offsets | null => {
    const spots = bench.spots(facts.cards);
    return spots === null ? null : offsetsOf(spots);
  };
  const seen = onCards();
  const answer = now.ask === null ? null : hand(now.ask.step);
  return { seen, turned: onCards(), hand: answer };
}

/**
 * A practice bench that was laid out by ruler and never steered.
 *
 * @param seed a whole number from 0 to 2³² − 1
 */
export const unsteeredBench = (launch: Launch, seed: number): HiddenBench =>
  hiddenBenchOf(launch, seededUniform(seed), 'unsteered');

/** A seed from a random id: its first eight hexadecimal digits. */
export const seedFromId = (id: string): number => Number.parseInt(id.slice(0, 8), 16);

/** A seed as typed: a whole number from 0 to 2³² − 1; null: it is none. */
export function readSeed(text: string): number | null {
  const seed = /^\d{1,10}$/u.test(text.trim()) ? Number(text) : Number.NaN;
  return seed <= 0xffffffff ? seed : null;
}

function offsetsOf({ near, far }: CardSpots): Offsets {
  const over = ({ forward, reverse }: CardSpots['near']) => ({
    x: forward.x - reverse.x,
    y: forward.y - reverse.y,
  });
  return { near: over(near), far: over(far) };
}

function handOn(
  bench: PracticeBench,
  { cards, raster }: SteerFacts,
  random: () => number,
  wayOf: (screw: Screw) => Sense,
): (step: SteerStep) => SteerAnswer {
  const h: Screw = { mirror: 'M2', axis: 'horizontal' };
  const v: Screw = { mirror: 'M2', axis: 'vertical' };
  const isLight = () => bench.standing() > outOfFloor * bench.floor();
  const count = (screw: Screw, turns: number) => {
    if (turns !== 0) bench.countedTurn(screw, wayOf(screw) * turns);
  };
  /** Turns slowly, watching the meter, and stops at light. */
  const sweep = (turns: number): boolean => {
    const pace = visibleRadius(raster.angleTolerated, raster.seen) / raster.horizontalTurn / 3;
    const looks = Math.ceil(Math.abs(turns) / pace);
    for (let look = 0; look < looks; look++) {
      bench.turn(h, (wayOf(h) * turns) / looks);
      if (isLight()) return true;
    }
    return false;
  };
  return (step) => {
    switch (step.kind) {
      case 'sense': {
        const way = wayOf(step.screw);
        bench.turn(step.screw, way * learningTurn);
        const sideways = way === 1 ? 'right' : 'left';
        return {
          outcome: 'went',
          to: step.screw.axis === 'horizontal' ? sideways : way === 1 ? 'up' : 'down',
        };
      }
      case 'offsets': {
        const spots = bench.spots(cards);
        const middle = { x: 0, y: 0 };
        const { near, far } = spots === null ? { near: middle, far: middle } : offsetsOf(spots);
        const read = ({ x, y }: CardOffset): CardOffset => ({
          x: x + cards.readingError * normalFrom(random),
          y: y + cards.readingError * normalFrom(random),
        });
        return { outcome: 'read', offsets: { near: read(near), far: read(far) } };
      }
      case 'turn':
        count(step.screw, step.turns.value);
        return { outcome: 'did' };
      case 'light':
        return { outcome: isLight() ? 'light' : 'dark' };
      case 'raster': {
        const { move } = step;
        if (move.do === 'line') {
          count(v, move.stepFirst);
          return { outcome: sweep(move.horizontal) ? 'light' : 'dark' };
        }
        count(v, move.vertical);
        count(h, move.horizontal);
        return { outcome: 'did' };
      }
    }
  };
}
