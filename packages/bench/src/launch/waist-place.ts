import type { Entry } from '../quantity/quantity.ts';

/**
 * A waist's place is known to no more than this share of its Rayleigh range: there a beam is 3 % wider than at its waist,
 * which is about what can be told on a card or a camera (common practice, no source).
 */
export const placeShare = 0.25;

/**
 * Distance over which a beam grows by √2, m.
 *
 * @source H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966) (from memory): π·radius²/(M²·wavelength)
 */
export const rayleighRange = (waistDiameter: number, quality: number, wavelength: number): number =>
  (Math.PI * waistDiameter ** 2) / (4 * quality * wavelength);

/** The place of a waist with its usual doubt drawn in to {@link placeShare}; a written doubt stays as it is. */
export function waistPlace(place: Entry, waistDiameter: Entry, quality: Entry, wavelength: Entry): Entry {
  if (place.defaulted === 'nothing') return place;
  const most = placeShare * rayleighRange(waistDiameter.value, quality.value, wavelength.value);
  return place.uncertainty > most ? { ...place, uncertainty: most } : place;
}
