import { type Known, middleWalk, ridgeWalk, taughtWalk, type WalkProcedure } from '@coreward/bench';
import { coordWalk, parabolaWalk, standingWalk } from './baselines.ts';

/** A way to walk, and whether it stands here only to be compared with. */
export interface Policy {
  readonly begin: (known: Known) => WalkProcedure;
  readonly isBaseline: boolean;
}

const ours = (begin: Policy['begin']): Policy => ({ begin, isBaseline: false });
const baseline = (begin: Policy['begin']): Policy => ({ begin, isBaseline: true });

/** Which way the taught walk first goes is told nowhere: this one agrees with the other program (docs/walk.md). */
const taughtFirst = -1;

/** Ways to walk, by the names they have in the table. */
export const policies: Readonly<Record<string, Policy>> = {
  ridge: ours((known) => (known.manyModes ? middleWalk(known) : ridgeWalk(known))),
  walk_hold1: baseline((known) => taughtWalk(known, 1, taughtFirst)),
  walk_hold: baseline((known) => taughtWalk(known, 2, taughtFirst)),
  walk: baseline(standingWalk),
  parab_ruler: baseline((known) => parabolaWalk(known, 'by-light')),
  parab: baseline((known) => parabolaWalk(known, 'by-count')),
  coord: baseline(coordWalk),
};
