import { type Background, isInside, type Window } from './moments.ts';
import type { Plane } from './plane.ts';

/** What is around a spot. */
export interface Dark {
  readonly background: Background;
  /** Scatter of one dark pixel. */
  readonly noise: number;
  /** Standard uncertainty of the level under the spot, in scatters of one pixel. */
  readonly levelShare: number;
  /** The same of the slopes along x and y, per pixel. */
  readonly slopeShares: readonly [number, number];
}

/** A plane through the pixels outside the window, or outside a smaller one where that leaves too few. */
export function darkAround(plane: Plane, window: Window, level0: number): Dark | null {
  const { width, height, light } = plane;
  for (const share of [1, 0.8, 0.67]) {
    const outer = { ...window, major: share * window.major, minor: share * window.minor };
    const stride = Math.max(1, Math.floor(Math.sqrt((width * height) / 200000)));
    // sums about the spot's centre in window lengths, so that the squares of distances keep their digits
    const unit = window.major;
    let [n, x, y, xx, xy, yy, v, vx, vy, vv] = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
    for (let row = 0; row < height; row += stride)
      for (let column = 0; column < width; column += stride) {
        if (isInside(outer, column, row)) continue;
        const [dx, dy] = [(column - window.x) / unit, (row - window.y) / unit];
        const value = light[row * width + column]! - level0;
        n += 1;
        x += dx;
        y += dy;
        xx += dx * dx;
        xy += dx * dy;
        yy += dy * dy;
        v += value;
        vx += value * dx;
        vy += value * dy;
        vv += value * value;
      }
    if (n < Math.max(60, (0.02 * width * height) / stride ** 2)) continue;
    const inverse = inverseOf([n, x, y, xx, xy, yy]);
    if (inverse === null) continue;
    const [level, slopeX, slopeY] = inverse.map((row) => row[0]! * v + row[1]! * vx + row[2]! * vy) as [
      number,
      number,
      number,
    ];
    const squares = Math.max(0, vv - level * v - slopeX * vx - slopeY * vy);
    const [gx, gy] = [slopeX / unit, slopeY / unit];
    return {
      background: { level: level0 + level - gx * window.x - gy * window.y, slopeX: gx, slopeY: gy },
      noise: Math.sqrt(squares / (n - 3)),
      levelShare: Math.sqrt(inverse[0]![0]!),
      slopeShares: [Math.sqrt(inverse[1]![1]!) / unit, Math.sqrt(inverse[2]![2]!) / unit],
    };
  }
  return null;
}

/** Pixels along one side of a tile that shows slow noise. */
export const tileSide = 8;

/** Means of tiles beside the window, without the background. */
function tileMeans({ width, height, light }: Plane, window: Window, dark: Background): readonly number[] {
  const { level, slopeX, slopeY } = dark;
  const side = tileSide;
  const beside = { ...window, major: window.major + side, minor: window.minor + side };
  const means: number[] = [];
  for (let y = 0; y + side <= height; y += side)
    for (let x = 0; x + side <= width; x += side) {
      if (isInside(beside, x + side / 2, y + side / 2)) continue;
      let sum = 0;
      for (let v = y; v < y + side; v++)
        for (let u = x; u < x + side; u++) sum += light[v * width + u]! - level - slopeX * u - slopeY * v;
      means.push(sum / side ** 2);
    }
  return means;
}

/**
 * Scatter of the dark at the slow end, as that of one pixel: from the means of 8 × 8 tiles. A JPEG rounds the fast part of
 * its noise away and keeps the slow one, which is what moves a moment; a dark that is not even shows here as well. 0 where
 * there are too few tiles.
 */
export function slowNoise(plane: Plane, window: Window, background: Background): number {
  const means = tileMeans(plane, window, background);
  if (means.length < 12) return 0;
  return tileSide * Math.sqrt(means.reduce((sum, mean) => sum + mean * mean, 0) / means.length);
}

/** Light of the brightest tile beside the window, above the background; 0 where there is none. */
export const lightBeside = (plane: Plane, window: Window, background: Background): number =>
  Math.max(0, ...tileMeans(plane, window, background));

/** Inverse of the symmetric matrix [[a, b, c], [b, d, e], [c, e, f]]; null where it has none. */
function inverseOf([a, b, c, d, e, f]: readonly [number, number, number, number, number, number]):
  | readonly (readonly number[])[]
  | null {
  const [A, B, C] = [d * f - e * e, c * e - b * f, b * e - c * d];
  const det = a * A + b * B + c * C;
  if (!(Math.abs(det) > 1e-12 * a * a * a)) return null;
  return [
    [A / det, B / det, C / det],
    [B / det, (a * f - c * c) / det, (b * c - a * e) / det],
    [C / det, (b * c - a * e) / det, (a * d - b * b) / det],
  ];
}
