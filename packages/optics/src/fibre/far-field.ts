import { brentRoot } from '../numerics/brent.ts';
import { OutOfRange } from '../out-of-range.ts';
import { type GuidedMode, spectrum } from './guided-mode.ts';
import { mustBeLp01 } from './lp01.ts';

/**
 * Q = q·a at which the far-field intensity S² of LP01 has fallen to `fraction` of that on the axis. Relative error below
 * 1e-12.
 *
 * @param fraction 0.02 (below lie side lobes) to 0.999
 * @throws {OutOfRange} if the fraction is outside, or the mode is not LP01
 * @source Brent's search on `spectrum`, whose source it has
 */
export function farFieldQ(mode: GuidedMode, fraction: number): number {
  mustBeLp01(mode, 'farFieldQ');
  if (!(fraction >= 0.02 && fraction <= 0.999)) {
    throw new OutOfRange({
      where: 'farFieldQ fraction',
      what: `${fraction} is outside 0.02 … 0.999`,
      mend: 'Give a fraction of the intensity on the axis, such as 0.05 or e⁻².',
    });
  }
  const level = Math.sqrt(fraction) * spectrum(mode, 0);
  const excess = (q: number) => spectrum(mode, q) - level;
  // The far field of LP01 falls steadily to its first zero, which lies beyond the width w of its cladding tail.
  let high = Math.min(0.1, mode.w);
  while (excess(high) > 0) high *= 1.3;
  return brentRoot(excess, 0, high);
}

/**
 * sin of the half angle, in air, at which the far-field intensity of LP01 has fallen to `fraction` of that on the axis:
 * e⁻² for the beam's 1/e² divergence, 0.05 for the 5 % NA. Neither equals the material NA.
 *
 * @param coreRadius m
 * @param wavelength in vacuum, m
 * @throws {OutOfRange} as `farFieldQ`
 * @source 5 %: IEC 60793-1-43 (from memory)
 */
export function farFieldSine(
  mode: GuidedMode,
  fraction: number,
  coreRadius: number,
  wavelength: number,
): number {
  return (farFieldQ(mode, fraction) * wavelength) / (2 * Math.PI * coreRadius);
}
