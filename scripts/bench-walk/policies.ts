import { type Known, middleWalk, ridgeWalk, taughtWalk, type WalkProcedure } from '@coreward/bench';
import { coordWalk, parabolaWalk, standingWalk } from './baselines.ts';

/** A way to walk, and whether it stands here only to be compared with. */
export interface Policy {
  readonly begin: (known: Known) => WalkProcedure;
  readonly isBaseline: boolean;
}

const ours = (begin: Policy['begin']): Policy => ({ begin, isBaseline: false });
const baseline = (begin: Policy['begin']): Policy => ({ begin, isBaseline: true });

/** Ways to walk, by the names they have in the table. */
export const policies: Readonly<Record<string, Policy>> = {
  ridge: ours((known) => (known.manyModes ? middleWalk(known) : ridgeWalk(known))),
  walk_hold1: baseline((known) => taughtWalk(known, 1)),
  walk_hold: baseline((known) => taughtWalk(known, 2)),
  walk: baseline(standingWalk),
  parab_ruler: baseline((known) => parabolaWalk(known, 'by-light')),
  parab: baseline((known) => parabolaWalk(known, 'by-count')),
  coord: baseline(coordWalk),
};
