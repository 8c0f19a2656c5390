import { type Known, ridgeWalk, taughtWalk, type WalkProcedure } from '@coreward/bench';

/** Ways to walk, by the names they have in the table. */
export const policies: Readonly<Record<string, (known: Known) => WalkProcedure>> = {
  ridge: ridgeWalk,
  walk_hold1: (known) => taughtWalk(known, 1),
  walk_hold: (known) => taughtWalk(known, 2),
};
