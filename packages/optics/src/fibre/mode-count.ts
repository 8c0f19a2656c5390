import { mustBePositive } from '../out-of-range.ts';
import { type LpMode, orientations } from './lp-mode.ts';

/** How many modes there are; polarisation is not counted, it would double both. */
export interface ModeCount {
  /** LP_lm, cos and sin as one. */
  readonly lpModes: number;
  /** cos and sin apart. */
  readonly withOrientation: number;
}

/** The modes of a list, counted both ways. */
export function countModes(modes: readonly Pick<LpMode, 'l'>[]): ModeCount {
  return {
    lpModes: modes.length,
    withOrientation: modes.reduce((sum, mode) => sum + orientations(mode), 0),
  };
}

/**
 * Number of guided modes for large V, orientation AND polarisation counted: V²/2 for a step, V²/4 for a parabola.
 *
 * An asymptote: within 15 % above V = 10 for the step; near single-mode operation it means nothing.
 *
 * @throws {OutOfRange} if V is not positive
 * @source D. Gloge and E. A. J. Marcatili, Bell Syst. Tech. J. 52, 1563 (1973) (from memory)
 */
export function modeCountEstimate(profile: 'step' | 'graded', vNumber: number): number {
  mustBePositive(vNumber, 'modeCountEstimate V', 'a V number');
  return vNumber ** 2 / (profile === 'step' ? 2 : 4);
}
