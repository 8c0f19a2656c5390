import type { Launch } from '../launch/launch.ts';
import { type Answers, nothingAnswered } from './answers.ts';
import { atTheFarEnd } from './at-the-far-end.ts';
import { laserExits, partsOnTheWay } from './at-the-laser.ts';
import { atTheLens } from './at-the-lens.ts';
import { atTheSources } from './at-the-sources.ts';
import { byGravity, type Hazard } from './hazard.ts';
import { onTheFacet } from './on-the-facet.ts';
import { onTheSkin } from './on-the-skin.ts';
import { type HazardQuestion, hazardQuestions } from './questions.ts';
import { type StaysConnected, staysConnected } from './stays-connected.ts';
import { toMind } from './to-mind.ts';
import { together } from './together.ts';
import { type Walk, walkOf } from './walk.ts';

/** Everything a bench has to be careful about. An estimate, and no certificate. */
export interface Cautions {
  readonly walk: Walk;
  /** Worst first. */
  readonly hazards: readonly Hazard[];
  /** What the launch cannot tell, in the order of asking. */
  readonly questions: readonly HazardQuestion[];
  /** Up to which power of the laser the reference source may stay connected. */
  readonly staysConnected: StaysConnected;
}

/** What is known besides the launch. */
export interface CautionOptions {
  /** Left out: nobody has answered anything, which counts as the worse. */
  readonly answers?: Answers;
  /** The share of the laser's light that has reached the far end so far, 0 to 1; `null` or left out: not known. */
  readonly couplingReached?: number | null;
}

/**
 * Walks a launch from the laser to the far end and back, and tells what can be hurt where. Losses are not counted, the
 * highest power is, and what is not known counts as the worse. Nothing is thrown for light outside the tables: it is
 * `not evaluated`, which stands first.
 *
 * @throws {OutOfRange} where a lens' glass or the beam itself leaves the range of the formulas
 */
export function cautionsFor(
  launch: Launch,
  { answers = nothingAnswered, couplingReached = null }: CautionOptions = {},
): Cautions {
  const walk = walkOf(launch, answers);
  const hazards = [
    ...laserExits(walk),
    ...partsOnTheWay(walk),
    ...atTheLens(walk),
    ...atTheFarEnd(walk),
    ...atTheSources(walk, couplingReached),
    ...onTheFacet(walk),
    ...onTheSkin(walk),
    ...together(walk),
    ...toMind(walk),
  ];
  return {
    walk,
    hazards: distinct(hazards).sort(byGravity),
    questions: hazardQuestions(launch, answers),
    staysConnected: staysConnected(walk, couplingReached),
  };
}

/** A mirror called `M1-leak` is not the leak of M1: the later one gets a number. */
function distinct(hazards: readonly Hazard[]): Hazard[] {
  const seen = new Map<string, number>();
  return hazards.map((hazard) => {
    const before = seen.get(hazard.id) ?? 0;
    seen.set(hazard.id, before + 1);
    return before === 0 ? hazard : { ...hazard, id: `${hazard.id}-${before + 1}` };
  });
}
