import { medianDeviation } from '@coreward/optics';
import type { Spot } from './find-spot.ts';
import { forWindow } from './moments.ts';
import type { Plane } from './plane.ts';

/** Fewer bright pixels than this show no noise of their own. */
const fewest = 10;

/**
 * How much faster the variance of a pixel grows with its light than the dark's own: it is 1 + this times the light, of that of
 * a dark pixel, as where photons are counted. From how the bright half of a spot differs from pixel to pixel, in what neither a
 * slope nor a bend of the light takes part in.
 *
 * @param noise scatter of a dark pixel, in the unit of the light
 * @returns in one over the unit of the light; 0 where the bright half shows no more noise than the dark
 * @source mask of second differences along both sides, J. Immerkær, Comput. Vis. Image Underst. 64, 300 (1996); photons
 *   counted vary as their number: elementary (from memory)
 */
export function brightNoise(
  plane: Plane,
  { window, axes, background, moments }: Spot,
  noise: number,
): number {
  const { width, height, light } = plane;
  const peak = moments.total / (2 * Math.PI * axes.major * axes.minor);
  // a Gaussian's own share of the mask at its peak: its fourth slope, once along each side
  const smooth = 1 / (6 * (axes.major * axes.minor) ** 2);
  const differences: number[] = [];
  let bright = 0;
  forWindow(plane, window, (at, dx, dy) => {
    const [x, y] = [at % width, Math.floor(at / width)];
    if (x < 1 || y < 1 || x > width - 2 || y > height - 2) return;
    const { level, slopeX, slopeY } = background;
    const here = light[at]! - level - slopeX * (window.x + dx) - slopeY * (window.y + dy);
    if (here < peak / 2) return;
    const row = (i: number): number => light[i - 1]! - 2 * light[i]! + light[i + 1]!;
    differences.push((row(at - width) - 2 * row(at) + row(at + width)) / 6 - here * smooth);
    bright += here;
  });
  const n = differences.length;
  if (n < fewest || !(noise > 0)) return 0;
  const excess = (medianDeviation(differences) / noise) ** 2 - 1;
  return Math.max(0, excess) / (bright / n);
}
