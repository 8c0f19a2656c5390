import { normalCdf, normalQuantile } from '@coreward/optics';
import type { MainAxes, Moments } from './moments.ts';

/** Noise about a dark so low that a camera cuts its lower part off at black; all in the unit of the light. */
export interface CutDark {
  /** The dark as it would be uncut. */
  readonly level: number;
  /** Scatter of one pixel, uncut. */
  readonly noise: number;
  /** Half a code: what is less becomes black. */
  readonly least: number;
}

/** Of fewer black pixels the cut takes nothing that matters; of more, noise is below one code and nothing is known of it. */
const blackShares = [0.03, 0.9] as const;

/**
 * The dark behind one that was cut: from its mean and the share of black pixels.
 *
 * @param black share of the dark pixels that are black
 * @param mean of the dark as it was read
 * @param step between two codes
 * @returns null where nothing was cut, or too much to tell
 * @source mean of a normal law of which only what is above a limit is kept: elementary
 */
export function cutDarkOf(black: number, mean: number, step: number): CutDark | null {
  if (!(black > blackShares[0] && black < blackShares[1])) return null;
  const least = step / 2;
  const limit = normalQuantile(black);
  const noise = (mean - least * (1 - black)) / (density(limit) - limit * (1 - black));
  return noise > 0 ? { level: least - limit * noise, noise, least } : null;
}

/**
 * What must be added to the light of a pixel whose dark was taken off as it was read: the cut raises the dark, but not
 * what lies well above it.
 *
 * @param light the pixel's own, without noise
 */
export const cutShare = (dark: CutDark, light: number): number => raised(dark, 0) - raised(dark, light);

/** How much the cut raises the mean of a pixel. */
function raised({ level, noise, least }: CutDark, light: number): number {
  const limit = (least - level - light) / noise;
  return noise * density(limit) - (level + light) * normalCdf(limit);
}

const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** The light of a Gaussian spot with these moments, at a distance from its centre. */
export function gaussianLight(
  { total }: Moments,
  { major, minor, azimuth }: MainAxes,
): (dx: number, dy: number) => number {
  const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
  const peak = total / (2 * Math.PI * major * minor);
  return (dx, dy) =>
    peak * Math.exp((-1 / 2) * (((dx * c + dy * s) / major) ** 2 + ((dy * c - dx * s) / minor) ** 2));
}
