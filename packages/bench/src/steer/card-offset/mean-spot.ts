import type { CardSpot } from './card-spot.ts';

/** A spot as several pictures show it. */
export interface MeanSpot {
  readonly spot: CardSpot;
  /** Scatter of its place from picture to picture, rms of one axis, px. */
  readonly scatter: number;
  readonly count: number;
}

/**
 * The mean of a spot over several pictures. What the pictures share, speckle that stands still, is not averaged out and
 * keeps the doubt of one; what moves between them counts with its scatter over the root of their number.
 *
 * @source standard uncertainty of a mean: JCGM 100:2008 (GUM), 4.2.3 (from memory)
 */
export function meanSpot(spots: readonly [CardSpot, ...CardSpot[]]): MeanSpot {
  const [first] = spots;
  const count = spots.length;
  const mean = (pick: (spot: CardSpot) => number): number =>
    spots.reduce((sum, spot) => sum + pick(spot), 0) / count;
  const [x, y] = [mean((spot) => spot.x), mean((spot) => spot.y)];
  const squares = mean((spot) => ((spot.x - x) ** 2 + (spot.y - y) ** 2) / 2);
  const scatter = count < 2 ? 0 : Math.sqrt((squares * count) / (count - 1));
  const square = {
    xx: mean((spot) => spot.square.xx),
    yy: mean((spot) => spot.square.yy),
    xy: mean((spot) => spot.square.xy),
  };
  const deviation = Math.sqrt((square.xx + square.yy) / 2);
  const noise = Math.max(
    mean((spot) => spot.centre.noise) / Math.sqrt(count),
    scatter / deviation / Math.sqrt(count),
  );
  return {
    spot: { ...first, x, y, square, centre: { ...first.centre, noise } },
    scatter,
    count,
  };
}
