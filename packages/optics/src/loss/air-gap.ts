import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import { normalReflectance } from './fresnel.ts';

/*
 * Two flat facets with a little air between them are a weak étalon. Plane waves at normal incidence; the spreading
 * of the beam across the gap is a loss of its own (joint.ts).
 */

/**
 * Fraction of coherent light that crosses the gap, 1/(1+F·sin²(k·gap)) with F = 4R/(1−R)². It returns to 1 at every
 * half wavelength and is smallest a quarter wavelength from there.
 *
 * @param index of the fibre (or glass) on both sides
 * @param gap m, 0 is contact
 * @param wavelength vacuum wavelength, m
 * @throws {OutOfRange} if an argument is negative or not finite
 * @source M. Born and E. Wolf, Principles of Optics, ch. 7: Airy's formula (from memory)
 */
export function airGapTransmission(index: number, gap: number, wavelength: number): number {
  mustBePositive(wavelength, 'wavelength', 'a wavelength');
  if (!(gap >= 0 && gap < Infinity)) {
    throw new OutOfRange({ where: 'gap', what: `${gap} m is no gap`, mend: 'Give 0 m (contact) or more.' });
  }
  const reflectance = normalReflectance(index, 1);
  const finesse = (4 * reflectance) / (1 - reflectance) ** 2; // Airy's coefficient, not the finesse of linewidths
  return 1 / (1 + finesse * Math.sin((2 * Math.PI * gap) / wavelength) ** 2);
}

/**
 * What crosses a gap of unknown width, averaged over the fringes: (1−R)/(1+R). Two single passes, (1−R)², would be
 * too little, for they drop the light that bounces.
 *
 * @throws {OutOfRange} if the index is not above zero
 * @source mean of Airy's formula over the phase; the same as all bounces summed without interference
 */
export function airGapMeanTransmission(index: number): number {
  const reflectance = normalReflectance(index, 1);
  return (1 - reflectance) / (1 + reflectance);
}

/**
 * The range through which a coherent transmission drifts as the gap changes by a quarter wavelength.
 *
 * @throws {OutOfRange} if the index is not above zero
 * @source M. Born and E. Wolf, Principles of Optics, ch. 7: Airy's formula at its extremes (from memory)
 */
export function airGapExtremes(index: number): { readonly minimum: number; readonly maximum: number } {
  return { minimum: airGapMeanTransmission(index) ** 2, maximum: 1 };
}
