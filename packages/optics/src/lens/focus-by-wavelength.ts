/**
 * How the focus of a single-glass lens follows the wavelength.
 *
 * A thin lens; of a thick one it gives the focal length's change exactly only if plano-convex, and its back focus is
 * another matter: see `singlet.ts`.
 */
import type { Glass } from '../glass/glass.ts';
import { refractiveIndex } from '../glass/refractive-index.ts';
import { mustBeFocalLength } from './waist-behind-lens.ts';

/**
 * Focal length at another wavelength, m: f ∝ 1/(n − 1).
 *
 * @param focalLength m, at `designWavelength`; negative if the lens diverges
 * @param designWavelength vacuum, m
 * @param wavelength vacuum, m
 * @throws {OutOfRange} if a wavelength is outside the range of the glass, or the focal length is zero
 * @source lensmaker's equation of a thin lens; Born & Wolf, Principles of Optics, ch. 4, from memory
 */
export function focalLengthAt(
  glass: Glass,
  focalLength: number,
  designWavelength: number,
  wavelength: number,
): number {
  mustBeFocalLength(focalLength, 'focalLengthAt');
  return (
    (focalLength * (refractiveIndex(glass, designWavelength) - 1)) / (refractiveIndex(glass, wavelength) - 1)
  );
}

/**
 * How far a fibre tip in the focus of this lens must move when the wavelength changes, m: negative is towards the lens.
 * From red to blue it is, for a lens that converges.
 *
 * @param focalLength m, at `wavelengthBefore`
 * @throws {OutOfRange} as `focalLengthAt`
 * @source as `focalLengthAt`
 */
export function tipMovement(
  glass: Glass,
  focalLength: number,
  wavelengthBefore: number,
  wavelengthNow: number,
): number {
  mustBeFocalLength(focalLength, 'tipMovement');
  const indexNow = refractiveIndex(glass, wavelengthNow);
  // f₂ − f₁ = f₁ (n₁ − n₂)/(n₂ − 1), without the difference of two lengths
  return (focalLength * (refractiveIndex(glass, wavelengthBefore) - indexNow)) / (indexNow - 1);
}
