import type { Sense } from '../walk/step.ts';
import { exactTurns, type Offsets } from './exact-turns.ts';
import { planRaster, type RasterFacts, rasterPath } from './raster.ts';
import { allScrews, type ScrewSenses, screwKey, senseThat } from './senses.ts';
import { growsTwice } from './serving-mirror.ts';
import type { Cards, SteerLayout } from './steer-layout.ts';
import type { SteerAnswer, SteerAsk, SteerProcedure, SteerRemark } from './step.ts';

/** What a steer is led by. */
export interface SteerFacts {
  readonly layout: SteerLayout;
  readonly cards: Cards;
  readonly raster: RasterFacts;
}

/** Spots nearer than this many reading errors lie over each other (our choice). */
const together = 1.5;
/** A turn smaller than this is not asked of a hand, turns (1/64: the smallest that a hand counts). */
const smallest = 1 / 64;
/** Passes after which light is looked for all the same (our choice). */
const mostPasses = 8;

/**
 * Learns the screws, lays the forward spot onto the reverse one by exact turns until both cards agree, looks for light, and
 * searches line by line if there is none, the second time in twice the box.
 */
export function* steer(facts: SteerFacts): SteerProcedure {
  const { layout, cards } = facts;
  const went = new Map<string, Sense>();
  let senses: ScrewSenses = yield* learn([]);
  let read: Offsets[] = [];
  for (let pass = 1; pass <= mostPasses; pass++) {
    const answer = yield { step: { kind: 'offsets', pass }, remarks: [] };
    if (answer.outcome !== 'read') continue;
    read.push(answer.offsets);
    const readingError = answer.readingError ?? cards.readingError;
    if (liesTogether(answer.offsets, readingError)) break;
    const remarks = growing(read, readingError);
    if (remarks.length > 0) {
      senses = yield* learn(remarks);
      read = [];
      continue;
    }
    let asked = 0;
    for (const { screw, turns } of exactTurns(answer.offsets, layout, { ...cards, readingError }, senses)) {
      if (Math.abs(turns.value) < smallest) continue;
      asked += 1;
      const way: Sense = turns.value > 0 ? 1 : -1;
      const reverses = went.get(screwKey(screw)) !== way;
      went.set(screwKey(screw), way);
      yield { step: { kind: 'turn', screw, turns, reverses }, remarks: [] };
    }
    // read so well that what is left is finer than a hand counts
    if (asked === 0) break;
  }
  const light = yield { step: { kind: 'light' }, remarks: [] };
  if (light.outcome === 'light') return 'light';
  for (const boxes of [1, 2] as const) {
    const raster = planRaster(facts.raster, boxes);
    for (const move of rasterPath(raster)) {
      const answer = yield { step: { kind: 'raster', boxes, move, lines: raster.lines }, remarks: [] };
      if (answer.outcome === 'light') return 'found';
    }
  }
  return 'dark';

  function* learn(remarks: readonly SteerRemark[]): Generator<SteerAsk, ScrewSenses, SteerAnswer> {
    const learned = new Map<string, Sense>();
    for (const [at, screw] of allScrews.entries()) {
      const answer = yield { step: { kind: 'sense', screw }, remarks: at === 0 ? remarks : [] };
      if (answer.outcome === 'went') learned.set(screwKey(screw), senseThat(answer.to));
      went.set(screwKey(screw), 1);
    }
    return learned;
  }
}

function liesTogether({ near, far }: Offsets, readingError: number): boolean {
  return [near, far].every(({ x, y }) => Math.max(Math.abs(x), Math.abs(y)) <= together * readingError);
}

/** Every offset that grew twice running. */
function growing(read: readonly Offsets[], readingError: number): readonly SteerRemark[] {
  return (['near', 'far'] as const).flatMap((card) =>
    (['horizontal', 'vertical'] as const).flatMap((axis): readonly SteerRemark[] => {
      const sizes = read.map((offsets) => offsets[card][axis === 'horizontal' ? 'x' : 'y']);
      return growsTwice(sizes, readingError) ? [{ id: 'grows', card, axis }] : [];
    }),
  );
}
