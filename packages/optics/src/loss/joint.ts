import { mustBePositive, OutOfRange } from '../out-of-range.ts';

/*
 * What two equal single modes, taken as Gaussians, lose where two fibres meet. One fault at a time, the others zero;
 * several at once, or unequal modes, are an overlap (beam/gaussian-overlap.ts). Reflection at a gap: air-gap.ts.
 * Mode field radius: half of the mode field diameter. A Gaussian has shorter tails than LP01, so offsets beyond two
 * radii are out of its reach.
 */

/**
 * Fraction coupled across a sideways offset: exp(−(offset/w)²), or 4.343·(offset/w)² dB.
 *
 * @param offset m
 * @param modeFieldRadius w, 1/e² of intensity, m
 * @throws {OutOfRange} if the radius is not above zero or the offset not finite
 * @source D. Marcuse, Bell Syst. Tech. J. 56, 703 (1977), from memory
 */
export function offsetTransmission(offset: number, modeFieldRadius: number): number {
  mustBePositive(modeFieldRadius, 'modeFieldRadius', 'a mode field radius');
  mustBeFinite(offset, 'offset', 'an offset in metres');
  return Math.exp(-((offset / modeFieldRadius) ** 2));
}

/**
 * Fraction coupled across an angle between the axes: exp(−(π·n·w·tilt/λ)²).
 *
 * @param tilt rad, of the light in the medium between the facets
 * @param modeFieldRadius w, 1/e² of intensity, m
 * @param wavelength vacuum wavelength, m
 * @param mediumIndex 1 for air, that of the glass for facets in contact
 * @throws {OutOfRange} if a length or index is not above zero or the tilt not finite
 * @source D. Marcuse, Bell Syst. Tech. J. 56, 703 (1977), from memory
 */
export function tiltTransmission(
  tilt: number,
  modeFieldRadius: number,
  wavelength: number,
  mediumIndex = 1,
): number {
  mustBePositive(modeFieldRadius, 'modeFieldRadius', 'a mode field radius');
  mustBePositive(wavelength, 'wavelength', 'a wavelength');
  mustBePositive(mediumIndex, 'mediumIndex', 'a refractive index');
  mustBeFinite(tilt, 'tilt', 'an angle in radians');
  return Math.exp(-(((Math.PI * mediumIndex * modeFieldRadius * tilt) / wavelength) ** 2));
}

/**
 * Fraction coupled across a gap in which the beam spreads: 1/(1 + (λ·gap/(2π·n·w²))²).
 *
 * @param gap m
 * @param modeFieldRadius w, 1/e² of intensity, m
 * @param wavelength vacuum wavelength, m
 * @param mediumIndex of what fills the gap, 1 for air
 * @throws {OutOfRange} if a length or index is not above zero or the gap not finite
 * @source D. Marcuse, Bell Syst. Tech. J. 56, 703 (1977), from memory
 */
export function gapTransmission(
  gap: number,
  modeFieldRadius: number,
  wavelength: number,
  mediumIndex = 1,
): number {
  mustBePositive(modeFieldRadius, 'modeFieldRadius', 'a mode field radius');
  mustBePositive(wavelength, 'wavelength', 'a wavelength');
  mustBePositive(mediumIndex, 'mediumIndex', 'a refractive index');
  mustBeFinite(gap, 'gap', 'a gap in metres');
  return 1 / (1 + ((wavelength * gap) / (2 * Math.PI * mediumIndex * modeFieldRadius ** 2)) ** 2);
}

function mustBeFinite(value: number, where: string, what: string): void {
  if (!Number.isFinite(value)) {
    throw new OutOfRange({ where, what: `${value} is not ${what}`, mend: 'Give a finite number.' });
  }
}
