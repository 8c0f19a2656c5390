import { mustBePositive } from '../out-of-range.ts';
import type { HazardDistance } from './hazard-distance.ts';

/** A distance as it matters in a room: walls end the beam, and kilometres are no advice. */
export type Reach =
  | { readonly kind: 'under the limit everywhere' }
  | { readonly kind: 'ends in the room'; readonly distance: number }
  | { readonly kind: 'reaches the wall'; readonly roomLength: number }
  /** Nobody said how long the room is. */
  | { readonly kind: 'room not known'; readonly distance: number };

/**
 * What to say of a distance in a room.
 *
 * @param roomLength longest way to a wall, m; `null`: not known
 * @throws {OutOfRange} if the room has no length
 * @source our proposal
 */
export function reachIn(hazard: HazardDistance, roomLength: number | null): Reach {
  const { distance } = hazard;
  if (roomLength !== null) mustBePositive(roomLength, 'roomLength', 'the length of a room');
  if (distance === 0) return { kind: 'under the limit everywhere' };
  if (roomLength === null) return { kind: 'room not known', distance };
  return distance > roomLength
    ? { kind: 'reaches the wall', roomLength }
    : { kind: 'ends in the room', distance };
}
