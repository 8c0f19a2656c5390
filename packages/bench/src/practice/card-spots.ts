import type { HiddenBench } from './hidden-bench.ts';

/** Where the two cards stand: distances upstream from the collimator's front focal plane, m. */
export interface CardPlaces {
  /** Before the near mirror. */
  readonly near: number;
  /** Behind the far mirror. */
  readonly far: number;
}

/** A spot on a card, m, seen looking downstream: x to the right, y up; the fibre's own axis is the origin. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** What is seen on both cards. */
export interface CardSpots {
  readonly near: { readonly forward: Spot; readonly reverse: Spot };
  readonly far: { readonly forward: Spot; readonly reverse: Spot };
}

const axis: Spot = { x: 0, y: 0 };

/**
 * The spots on both cards. Unfolded, the height of the forward over the reverse beam is a straight line through both
 * mirrors, X − θz, for a mirror turns both beams alike.
 *
 * Roll of the picture by tilts across the plane of incidence, a second-order effect, is left out.
 *
 * @param turns the four screws from their best places
 * @source geometry, derived here
 */
export function cardSpots(
  screws: NonNullable<HiddenBench['screws']>,
  turns: readonly number[],
  places: CardPlaces,
): CardSpots {
  const line = ({ angle, distance }: (typeof screws)['horizontal'], m1: number, m2: number) => {
    const slope = angle[0] * m1 + angle[1] * m2;
    const offset = distance[0] * angle[0] * m1 + distance[1] * angle[1] * m2;
    return (z: number) => offset - slope * z;
  };
  const x = line(screws.horizontal, turns[0]!, turns[1]!);
  const y = line(screws.vertical, turns[2]!, turns[3]!);
  return {
    near: { forward: { x: x(places.near), y: y(places.near) }, reverse: axis },
    far: { forward: { x: x(places.far), y: y(places.far) }, reverse: axis },
  };
}
