import { mustBePositive } from '../out-of-range.ts';

/**
 * The graded core as if its parabola went on for ever: its modes are Laguerre-Gauss beams of one mode radius, in groups
 * of equal propagation constant. Right for modes deep in a core of large V; the real, truncated one (`gradedModes`) has
 * a u lower by 1 to 3 % near cut-off and by 8.5 % for LP01 at V = 2.
 */
export interface ParabolaGroup {
  /** g = 2p + l + 1, from 1, p = m − 1. */
  readonly group: number;
  /** √(2Vg). */
  readonly u: number;
  /** 1 − 2g/V. */
  readonly b: number;
  /** LP_lm in the group. */
  readonly lpModes: number;
  /** The same, cos and sin apart: g. */
  readonly withOrientation: number;
}

/**
 * The guided groups, g < V/2, the deepest first.
 *
 * @throws {OutOfRange} if V is not positive
 * @source D. Gloge and E. A. J. Marcatili, Bell Syst. Tech. J. 52, 1563 (1973); D. Marcuse, Light Transmission Optics
 *   (1972) (from memory)
 */
export function parabolaGroups(vNumber: number): ParabolaGroup[] {
  mustBePositive(vNumber, 'parabolaGroups V', 'a V number');
  return Array.from({ length: Math.ceil(vNumber / 2) - 1 }, (_, i) => {
    const group = i + 1;
    return {
      group,
      u: Math.sqrt(2 * vNumber * group),
      b: 1 - (2 * group) / vNumber,
      lpModes: Math.ceil(group / 2),
      withOrientation: group,
    };
  });
}

/**
 * 1/e² intensity radius of the fundamental in core radii, √(2/V); in metres √(2a/(k·NA)). Its divergence is that of any
 * Gaussian of this waist, λ/(πw).
 *
 * @throws {OutOfRange} if V is not positive
 * @source D. Marcuse, Light Transmission Optics (1972) (from memory)
 */
export function parabolaModeRadius(vNumber: number): number {
  mustBePositive(vNumber, 'parabolaModeRadius V', 'a V number');
  return Math.sqrt(2 / vNumber);
}
