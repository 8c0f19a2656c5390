/** Which screw a hand turned last in a step, where somebody knows: on a practice bench, whose screws are turned on the page. */
import type { Screw } from './step.ts';

/** The screw that was turned last, and how far in all since another one was, turns. */
export interface TurnedScrew {
  readonly screw: Screw;
  readonly turns: number;
}

export const isSameScrew = (one: Screw | null, other: Screw | null): boolean =>
  one !== null && other !== null && one.mirror === other.mirror && one.axis === other.axis;

/** With one more turn. @param before null: none was turned in this step yet */
export function withTurned(before: TurnedScrew | null, screw: Screw, turns: number): TurnedScrew {
  return { screw, turns: isSameScrew(before?.screw ?? null, screw) ? before!.turns + turns : turns };
}

/** Nearer to where it stood no screw is turned by hand, turns. @source our choice: less than the slack of any */
const asItStood = 1 / 1024;

/** The screw that counts as turned; null: none, or it was turned back by as much. */
export const turnedOf = (turned: TurnedScrew | null): Screw | null =>
  turned === null || Math.abs(turned.turns) < asItStood ? null : turned.screw;
