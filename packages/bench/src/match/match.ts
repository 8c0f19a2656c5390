import { OutOfRange } from '@coreward/optics';
import { assembleLaunch } from '../drawer/assemble-launch.ts';
import type { Drawer } from '../drawer/drawer.ts';
import { fewModedBelow, modesTaker, raysTaker, type Taker } from '../forecast/fibre-taker.ts';
import { Refusal } from '../refusal.ts';
import { matchPair } from './match-pair.ts';
import type { Match, MatchedPair, MatchProgress, MatchPurpose } from './matched.ts';

export interface MatchOptions {
  readonly purpose: MatchPurpose;
  /** Only this laser; `null`: all. */
  readonly laser: string | null;
}

/** Rungs of the ladders: a match needs a part in a thousand. */
const matchRungs = 24;

/**
 * Ranks the drawer's combinations for one purpose. A generator, so that the hand is never held up: it yields after every
 * few hundred combinations how far it is and the best so far, and returns the whole ranking.
 *
 * @throws {Refusal} if the drawer has no laser, no fibre, or no laser of that name
 */
export function* matching(drawer: Drawer, { purpose, laser }: MatchOptions): Generator<MatchProgress, Match> {
  const lasers = laser === null ? drawer.lasers : [namedLaser(drawer, laser)];
  for (const [list, parts] of [
    ['lasers', drawer.lasers],
    ['fibres', drawer.fibres],
  ] as const) {
    if (parts.length === 0) {
      throw new Refusal({
        where: `${drawer.name} ${list}`,
        what: `the drawer has no ${list}, and a match needs one at least`,
        mend: `Add one to \`${list}\`.`,
      });
    }
  }
  const collimators = drawer.collimators.length === 0 ? ['none'] : drawer.collimators.map(({ name }) => name);
  const total = lasers.length * drawer.fibres.length * collimators.length;
  const pairs: MatchedPair[] = [];
  const leftOut: Match['leftOut'][number][] = [];
  let best: MatchedPair | null = null;
  let done = 0;
  const takers = new Map<string, Taker>();
  for (const { name: laserName } of lasers) {
    for (const { name: fibreName } of drawer.fibres) {
      for (const collimator of collimators) {
        done += 1;
        const names = { laser: laserName, collimator, fibre: fibreName };
        try {
          const pair = matchPair(assembleLaunch(drawer, names), names, purpose, (profile, v) =>
            takerFor(takers, profile, v),
          );
          pairs.push(pair);
          if (best === null || pair.score.value > best.score.value) best = pair;
        } catch (error) {
          if (!(error instanceof OutOfRange || error instanceof Refusal)) throw error;
          leftOut.push({
            ...names,
            why: error instanceof Refusal ? error.parts.map(({ what }) => what).join('; ') : error.what,
          });
        }
        if (done % 250 === 0) yield { done, total, best };
      }
    }
  }
  yield { done, total, best };
  return { purpose, pairs: pairs.sort((a, b) => b.score.value - a.score.value), leftOut };
}

/** The whole match at once. */
export function match(drawer: Drawer, options: MatchOptions): Match {
  const steps = matching(drawer, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

function takerFor(takers: Map<string, Taker>, profile: 'step' | 'graded', vNumber: number): Taker {
  const key = `${profile} ${vNumber}`;
  let taker = takers.get(key);
  if (taker === undefined) {
    taker = vNumber < fewModedBelow ? modesTaker(profile, vNumber, matchRungs) : raysTaker(profile, vNumber);
    takers.set(key, taker);
  }
  return taker;
}

function namedLaser(drawer: Drawer, name: string): Drawer['lasers'][number] {
  const found = drawer.lasers.find((candidate) => candidate.name === name);
  if (found !== undefined) return found;
  throw new Refusal({
    where: `${drawer.name} lasers`,
    what: `no laser is called \`${name}\``,
    mend: `Write one of ${drawer.lasers.map((candidate) => `\`${candidate.name}\``).join(', ')}.`,
  });
}
