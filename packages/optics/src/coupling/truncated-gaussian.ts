import { mustBePositive } from '../out-of-range.ts';

/**
 * Coupling of a centred, collimated Gaussian, cut by the lens's stop, into a Gaussian mode; all radii on the lens.
 * `coupled` is the fraction of the power that arrives before the stop, `passed` what the stop lets through.
 *
 * @param beamRadius 1/e² radius on the lens
 * @param modeRadius 1/e² radius on the lens of light sent backwards from the fibre
 * @source R. E. Wagner and W. J. Tomlinson, Appl. Opt. 21, 2671 (1982), the approach (from memory); elementary integral
 */
export function truncatedGaussianCoupling(
  beamRadius: number,
  modeRadius: number,
  stopRadius: number,
): { readonly coupled: number; readonly passed: number } {
  mustBePositive(beamRadius, 'truncatedGaussianCoupling beamRadius', 'a beam radius');
  mustBePositive(modeRadius, 'truncatedGaussianCoupling modeRadius', 'a mode radius');
  mustBePositive(stopRadius, 'truncatedGaussianCoupling stopRadius', 'a stop radius');
  const sum = 1 / beamRadius ** 2 + 1 / modeRadius ** 2;
  // expm1 keeps the digits when the stop is far smaller than the beam
  const cut = -Math.expm1(-(stopRadius ** 2) * sum);
  return {
    coupled: ((2 / (beamRadius * modeRadius * sum)) * cut) ** 2,
    passed: -Math.expm1((-2 * stopRadius ** 2) / beamRadius ** 2),
  };
}
