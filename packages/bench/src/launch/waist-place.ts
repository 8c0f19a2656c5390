import { rayleighRange } from '@coreward/optics';
import type { Entry } from '../quantity/quantity.ts';

/**
 * A waist's place is known to no more than this share of its Rayleigh range: there a beam is 3 % wider than at its waist,
 * which is about what can be told on a card or a camera (common practice, no source).
 */
export const placeShare = 0.25;

/** The place of a waist with its usual doubt drawn in to {@link placeShare}; a written doubt stays as it is. */
export function waistPlace(place: Entry, waistDiameter: Entry, quality: Entry, wavelength: Entry): Entry {
  if (place.defaulted === 'nothing') return place;
  const beam = {
    waistRadius: waistDiameter.value / 2,
    waistPosition: place.value,
    quality: quality.value,
    wavelength: wavelength.value,
  };
  const most = placeShare * rayleighRange(beam);
  return place.uncertainty > most ? { ...place, uncertainty: most } : place;
}
