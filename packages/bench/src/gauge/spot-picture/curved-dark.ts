import { leastSquares } from '@coreward/optics';
import { isInside, type Window } from './moments.ts';
import type { Plane } from './plane.ts';

/** A picture whose dark was bent, after the bend was taken off. */
export interface Flattened {
  readonly plane: Plane;
  /** Standard uncertainty of the level at the window's centre, in scatters of one pixel. */
  readonly levelShare: number;
}

/** So many pixels are enough to tell a bend, and quick. */
const mostPixels = 6000;

/** Ratio of variances above which three terms more are no chance: once in ten thousand of even darks (Fisher's law, 3 and many). */
const clearly = 7;

/**
 * Takes the bend of the dark off, where the pixels outside the window clearly show one: of the terms of second order about
 * the window's centre only, so that a plane is left as it was.
 *
 * @returns null where they show none, or are too few
 * @source test of added terms by the ratio of variances, R. A. Fisher (from memory)
 */
export function flattened(plane: Plane, window: Window): Flattened | null {
  const { width, height, light } = plane;
  const stride = Math.max(1, Math.ceil(Math.sqrt((width * height) / mostPixels)));
  const [xs, ys, values]: [number[], number[], number[]] = [[], [], []];
  for (let y = 0; y < height; y += stride)
    for (let x = 0; x < width; x += stride) {
      if (isInside(window, x, y)) continue;
      xs.push((x - window.x) / window.major);
      ys.push((y - window.y) / window.major);
      values.push(light[y * width + x]!);
    }
  if (values.length < 100) return null;
  const level = [xs.map(() => 1), xs, ys];
  const bends = [xs.map((x) => x * x), xs.map((x, i) => x * ys[i]!), ys.map((y) => y * y)];
  const even = leastSquares(level, values);
  const bent = leastSquares([...level, ...bends], values);
  if (even === null || bent === null) return null;
  const ratio = (even.squares - bent.squares) / 3 / (bent.squares / (values.length - 6));
  if (!(ratio > clearly)) return null;
  const [, , , xx, xy, yy] = bent.coefficients as [number, number, number, number, number, number];
  const flat = light.map((value, i) => {
    const x = ((i % width) - window.x) / window.major;
    const y = (Math.floor(i / width) - window.y) / window.major;
    return value - xx * x * x - xy * x * y - yy * y * y;
  });
  return { plane: { width, height, light: flat }, levelShare: Math.sqrt(bent.inverse[0]![0]!) };
}
