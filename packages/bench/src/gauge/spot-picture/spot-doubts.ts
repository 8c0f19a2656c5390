import { brightNoise } from './bright-noise.ts';
import { slowNoise, tileSide } from './dark-around.ts';
import { litReach, type Seen } from './find-spot.ts';
import { forWindow, isInside, type MainAxes, type Moments } from './moments.ts';
import type { Plane, PlaneRead } from './plane.ts';

/** Standard uncertainties of a spot's squared deviations (blocks²) and centre (blocks), by cause. */
export interface SpotDoubts {
  readonly noise: Moments2;
  readonly background: Moments2;
  /** Of the centre along x and y, px, by noise and background together. */
  readonly centre: readonly [number, number];
  /** Of the centre along x and y, by a picture that sees less towards its corners. */
  readonly falloff: readonly [number, number];
  /** Whether the dark around the spot is far less even than its noise. */
  readonly isUneven: boolean;
  /** Of the difference of the two squared deviations, px². */
  readonly difference: number;
  /** Of what turns the main axes: the mean of along times across, px². */
  readonly cross: number;
}

interface Moments2 {
  /** Of the mean of both squared deviations, px². */
  readonly mean: number;
  readonly major: number;
  readonly minor: number;
}

/** How well what a cut dark took is known, as a share of it: the spot need not be a Gaussian (common practice, no source). */
const cutDoubt = 0.25;

/** How much less a picture’s corners may see than its middle, as a share: the root of the mean square of 0 to 30 % (common practice, no source). */
const usualFalloff = 0.17;

/**
 * How far a centre may have been drawn towards the middle of a picture that sees less the farther out, as the square of the
 * distance: a slope of the sensitivity moves it by the squared deviation times the slope.
 *
 * @param deviations squared, along x and y
 * @source first moment of a Gaussian times a slope: elementary
 */
function falloffDoubt(
  { width, height }: Plane,
  { x, y }: Pick<Moments, 'x' | 'y'>,
  deviations: readonly [number, number],
): readonly [number, number] {
  const [middleX, middleY] = [(width - 1) / 2, (height - 1) / 2];
  const slope = (2 * usualFalloff) / (middleX ** 2 + middleY ** 2);
  return [deviations[0] * slope * Math.abs(x - middleX), deviations[1] * slope * Math.abs(y - middleY)];
}

/**
 * Noise of independent pixels, and of the background's level, carried to the second moments: each pixel pulls by
 * (distance² − moment)/total.
 *
 * @source propagation to first order, JCGM 100:2008, 5.1.2 (from memory)
 */
export function spotDoubts({ spot, blocks, block, grain }: Seen, read: PlaneRead): SpotDoubts {
  const { window, axes, moments, levelShare, slopeShares, byCut } = spot;
  const { step, leastNoise, blockStep } = read;
  // rounding acts as noise of its own beside that of the dark, which may be rounded away
  const fast = Math.hypot(spot.noise, leastNoise / block);
  const slow = slowNoise(blocks, window, spot.background);
  const noise = blockStep > 0 ? Math.max(slow, fast) : fast;
  // a dozen tiles scatter by a fifth: twice the noise is no chance; under the spot the plane may be off by twice as much
  const isUneven = slow > 2 * noise;
  const uneven = isUneven ? (2 * Math.sqrt(slow ** 2 - noise ** 2)) / tileSide : 0;
  const [c, s] = [Math.cos(window.azimuth), Math.sin(window.azimuth)];
  const [a2, b2] = [axes.major ** 2, axes.minor ** 2];
  let [majors, minors, means, differences, crosses, xx, yy] = [0, 0, 0, 0, 0, 0, 0];
  let [noisyX, noisyY] = [0, 0];
  let [pullMajor, pullMinor, pullX, pullY] = [0, 0, 0, 0];
  const lit = (litReach(spot, step) / spot.reach) ** 2;
  let [litMajor, litMinor] = [0, 0];
  // a JPEG has rounded away what its bright pixels differ by
  const perLight = blockStep > 0 ? 0 : brightNoise(blocks, spot, noise);
  const { level: dark, slopeX, slopeY } = spot.background;
  forWindow(blocks, window, (at, dx, dy) => {
    const light = blocks.light[at]! - dark - slopeX * (window.x + dx) - slopeY * (window.y + dy);
    const times = 1 + perLight * light;
    const along = (dx * c + dy * s) ** 2 - a2;
    const across = (dy * c - dx * s) ** 2 - b2;
    majors += times * along * along;
    minors += times * across * across;
    means += times * ((along + across) / 2) ** 2;
    differences += times * (along - across) ** 2;
    crosses += times * (along + a2) * (across + b2);
    xx += dx * dx;
    noisyX += times * dx * dx;
    yy += dy * dy;
    noisyY += times * dy * dy;
    pullX += dx;
    pullY += dy;
    pullMajor += along;
    pullMinor += across;
    if ((along + a2) / window.major ** 2 + (across + b2) / window.minor ** 2 > lit) return;
    litMajor += along;
    litMinor += across;
  });
  const pixel = noise / moments.total;
  const level = Math.hypot(levelShare * noise, uneven) / moments.total;
  const byGrain = grain / moments.total;
  const centre = (noisy: number, squares: number, pull: number, slope: number): number =>
    Math.max(Math.hypot(pixel * Math.sqrt(noisy), level * pull, pixel * slope * squares), 1e-3);
  return {
    noise: {
      mean: pixel * Math.sqrt(means),
      major: pixel * Math.sqrt(majors),
      minor: pixel * Math.sqrt(minors),
    },
    background: {
      mean: Math.hypot(
        (level * (pullMajor + pullMinor)) / 2,
        (byGrain * (litMajor + litMinor)) / 2,
        (cutDoubt * (byCut.major + byCut.minor)) / 2,
      ),
      major: Math.hypot(level * pullMajor, byGrain * litMajor, cutDoubt * byCut.major),
      minor: Math.hypot(level * pullMinor, byGrain * litMinor, cutDoubt * byCut.minor),
    },
    centre: [centre(noisyX, xx, pullX, slopeShares[0]), centre(noisyY, yy, pullY, slopeShares[1])],
    falloff: falloffDoubt(blocks, moments, [moments.xx, moments.yy]),
    isUneven,
    difference: pixel * Math.sqrt(differences),
    cross: pixel * Math.sqrt(crosses),
  };
}

/**
 * The true half difference of squared deviations, px²: noise always pulls the two apart, so its own share is taken off.
 *
 * @source the size of a vector with noise in both components (S. O. Rice, 1945): elementary
 */
export function trueAxes(
  { major, minor }: MainAxes,
  difference: number,
): MainAxes & { readonly isRound: boolean } {
  const mean = (major ** 2 + minor ** 2) / 2;
  const seen = major ** 2 - minor ** 2;
  const half = Math.sqrt(Math.max(0, seen ** 2 - difference ** 2)) / 2;
  return {
    major: Math.sqrt(mean + half),
    minor: Math.sqrt(Math.max(0, mean - half)),
    azimuth: 0,
    isRound: seen < 3 * difference || seen < 0.02 * mean,
  };
}

/**
 * Light at the frame's edge as a share of the peak, where the frame cuts the spot's window; 0 where it does not.
 *
 * The worst stretch of the edge counts, two deviations long.
 */
export function lightAtFrame({ spot, blocks }: Seen, peak: number): number {
  const { window, axes, background } = spot;
  const { width, height, light } = blocks;
  const value = (x: number, y: number): number | null =>
    isInside(window, x, y)
      ? light[y * width + x]! - background.level - background.slopeX * x - background.slopeY * y
      : null;
  const edges = [
    Array.from({ length: width }, (_, x) => value(x, 0)),
    Array.from({ length: width }, (_, x) => value(x, height - 1)),
    Array.from({ length: height }, (_, y) => value(0, y)),
    Array.from({ length: height }, (_, y) => value(width - 1, y)),
  ];
  const stretch = Math.max(3, Math.round(2 * axes.minor));
  let worst = 0;
  for (const edge of edges)
    for (let from = 0; from + stretch <= edge.length; from += Math.max(1, stretch >> 1)) {
      const part = edge.slice(from, from + stretch).filter((one) => one !== null);
      if (part.length < stretch) continue;
      worst = Math.max(worst, part.reduce((sum, one) => sum + one, 0) / part.length / peak);
    }
  return worst;
}
