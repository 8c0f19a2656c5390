import type { Forecast } from './expected.ts';
import { fewModedBelow } from './fibre-taker.ts';

/** Above this share lost to the finest turn of a hand, a mount is too coarse to keep the peak (common practice, no source). */
export const coarseAbove = 0.03;

/** What the finest turn of a hand costs, and of which light. */
export interface HandLoss {
  readonly share: number;
  readonly of: 'the light' | 'the light in LP01' | 'the guided light';
}

/**
 * The loss by which mounts are judged: of LP01 where a fibre has few modes, of all guided light where it has many, for
 * nobody launches into one mode of a hundred. Null where no mount is given.
 */
export function handLoss({ fibre, tolerances }: Pick<Forecast, 'fibre' | 'tolerances'>): HandLoss | null {
  const few = fibre.vNumber.value < fewModedBelow;
  const share = few ? tolerances.handLimit : tolerances.handLimitGuided;
  if (share === null) return null;
  return { share, of: fibre.lpModes === 1 ? 'the light' : few ? 'the light in LP01' : 'the guided light' };
}
