/** Index of a glass by wavelength. As the sources have it: against air for glasses in the catalogue's sense, near 20 °C. */
import { OutOfRange } from '../out-of-range.ts';
import { squaredIndex } from './dispersion.ts';
import type { Glass } from './glass.ts';

/**
 * Phase index at a vacuum wavelength (m).
 *
 * @throws {OutOfRange} outside the wavelengths for which the glass's source gives its formula
 * @source the glass's own `source`
 */
export function refractiveIndex(glass: Glass, wavelength: number): number {
  mustBeInRange(glass, wavelength, 'refractiveIndex');
  return Math.sqrt(squaredIndex(glass.dispersion, wavelength).value);
}

/**
 * dn/dλ at a vacuum wavelength, 1/m; negative where dispersion is normal.
 *
 * @throws {OutOfRange} outside the range of the glass
 * @source derivative of the glass's formula
 */
export function indexSlope(glass: Glass, wavelength: number): number {
  mustBeInRange(glass, wavelength, 'indexSlope');
  const { value, slope } = squaredIndex(glass.dispersion, wavelength);
  return slope / (2 * Math.sqrt(value));
}

/**
 * Group index n − λ dn/dλ at a vacuum wavelength (m): what a pulse feels.
 *
 * @throws {OutOfRange} outside the range of the glass
 * @source Born & Wolf, Principles of Optics, ch. 1; from memory
 */
export function groupIndex(glass: Glass, wavelength: number): number {
  return refractiveIndex(glass, wavelength) - wavelength * indexSlope(glass, wavelength);
}

/** Vacuum wavelengths, m, of the lines by which catalogues compare glasses; as in the catalogue sheets. */
export const fraunhoferLines = { d: 587.5618e-9, F: 486.1327e-9, C: 656.2725e-9 } as const;

/**
 * Abbe number (n_d − 1)/(n_F − n_C): large for a glass that disperses little.
 *
 * @throws {OutOfRange} if one of the lines lies outside the range of the glass
 * @source ISO 7944, from memory
 */
export function abbeNumber(glass: Glass): number {
  const { d, F, C } = fraunhoferLines;
  return (refractiveIndex(glass, d) - 1) / (refractiveIndex(glass, F) - refractiveIndex(glass, C));
}

function mustBeInRange({ name, range: [shortest, longest] }: Glass, wavelength: number, where: string): void {
  // one part in 10¹² of slack: 0.3e-6 and 300e-9 are the same wavelength
  if (wavelength >= shortest * (1 - 1e-12) && wavelength <= longest * (1 + 1e-12)) return;
  throw new OutOfRange({
    where: `${where} wavelength`,
    what: `${wavelength} m is outside ${shortest} m to ${longest} m, where the index of ${name} is known`,
    mend: 'Give a vacuum wavelength in metres inside that range, or name a glass known at this one.',
  });
}
