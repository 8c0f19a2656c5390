import { slowNoise } from './dark-around.ts';
import type { Seen } from './find-spot.ts';
import { forWindow, isInside, type MainAxes } from './moments.ts';
import type { PlaneRead } from './plane.ts';

/** Standard uncertainties of a spot's squared deviations (blocks²) and centre (blocks), by cause. */
export interface SpotDoubts {
  readonly noise: Moments2;
  readonly background: Moments2;
  /** Of the centre, px, by noise and background slope together. */
  readonly centre: number;
  /** Of the difference of the two squared deviations, px². */
  readonly difference: number;
}

interface Moments2 {
  /** Of the mean of both squared deviations, px². */
  readonly mean: number;
  readonly major: number;
  readonly minor: number;
}

/**
 * Noise of independent pixels, and of the background's level, carried to the second moments: each pixel pulls by
 * (distance² − moment)/total.
 *
 * @param read its `step` between two codes: a background without noise to blur it is known to a third of a step only
 * @source propagation to first order, JCGM 100:2008, 5.1.2 (from memory)
 */
export function spotDoubts({ spot, blocks, block }: Seen, read: PlaneRead): SpotDoubts {
  const { window, axes, moments, levelShare } = spot;
  const { step, leastNoise, blockStep } = read;
  // rounding acts as noise of its own beside that of the dark, which may be rounded away
  const slow = blockStep > 0 ? slowNoise(blocks, window, spot.background) : 0;
  const noise = Math.max(slow, Math.hypot(spot.noise, leastNoise / block));
  const [c, s] = [Math.cos(window.azimuth), Math.sin(window.azimuth)];
  const [a2, b2] = [axes.major ** 2, axes.minor ** 2];
  let [majors, minors, means, differences, centres] = [0, 0, 0, 0, 0];
  let [pullMajor, pullMinor] = [0, 0];
  forWindow(blocks, window, (_, dx, dy) => {
    const along = (dx * c + dy * s) ** 2 - a2;
    const across = (dy * c - dx * s) ** 2 - b2;
    majors += along * along;
    minors += across * across;
    means += ((along + across) / 2) ** 2;
    differences += (along - across) ** 2;
    centres += dx * dx + dy * dy;
    pullMajor += along;
    pullMinor += across;
  });
  const pixel = noise / moments.total;
  // noise of a third of a step or more blurs the steps away
  const grain = spot.noise * block > step / 3 ? 0 : step / Math.sqrt(12);
  const level = Math.hypot(levelShare * noise, grain) / moments.total;
  return {
    noise: {
      mean: pixel * Math.sqrt(means),
      major: pixel * Math.sqrt(majors),
      minor: pixel * Math.sqrt(minors),
    },
    background: {
      mean: (level * Math.abs(pullMajor + pullMinor)) / 2,
      major: level * Math.abs(pullMajor),
      minor: level * Math.abs(pullMinor),
    },
    centre: Math.max(pixel * Math.sqrt(centres / 2), 1e-3),
    difference: pixel * Math.sqrt(differences),
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
