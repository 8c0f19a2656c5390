import { mustBePositive, OutOfRange } from '../out-of-range.ts';

/** A multimode fibre as the counting of its modes sees it. */
export interface MultimodeGuide {
  /** α of n² = n₁²·(1 − 2Δ·(r/a)^α): 2 for a parabola, Infinity for a step. */
  readonly profileExponent: number;
  /** m. */
  readonly coreRadius: number;
  /** Δ = NA²/(2·n_core²). */
  readonly relativeIndexDifference: number;
  readonly claddingIndex: number;
}

/**
 * Fraction of the modes that a bend leaves guided: 1 − (α+2)/(2αΔ)·[2a/R + (3/(2·n₂·k·R))^⅔].
 *
 * Of modes, equal power in all: a launch that fills the low ones loses less. It applies once; further turns of the
 * same radius cost almost nothing, for what they would take is gone.
 *
 * @param radius of the bend to the fibre's axis, m
 * @param wavelength vacuum wavelength, m
 * @throws {OutOfRange} if the bend is so tight that the count falls below zero, where the picture fails
 * @source D. Gloge, Appl. Opt. 11, 2506 (1972); the formula read in a textbook exercise, the paper from memory
 */
export function remainingModeFraction(guide: MultimodeGuide, radius: number, wavelength: number): number {
  mustBeGuide(guide, wavelength);
  mustBePositive(radius, 'radius', 'a bend radius');
  const fraction = 1 - lostFraction(guide, radius, wavelength);
  if (fraction < 0) {
    throw new OutOfRange({
      where: 'radius',
      what: `a bend of ${radius} m leaves no modes to count`,
      mend: `Bend to more than ${smallestCountedRadius(guide, wavelength)} m.`,
    });
  }
  return fraction;
}

/**
 * The bend radius (m) at which `remainingModeFraction` reaches zero; it answers from here upwards.
 *
 * @throws {OutOfRange} if an argument is not above zero
 * @source the same formula, solved for R
 */
export function smallestCountedRadius(guide: MultimodeGuide, wavelength: number): number {
  mustBeGuide(guide, wavelength);
  // The loss falls with R between R^-1 and R^-2/3, so each step leaves at most a third of the error in ln R.
  let radius = guide.coreRadius;
  for (let step = 0; step < 60; step++) radius *= lostFraction(guide, radius, wavelength);
  return radius * (1 + 1e-9); // on the counted side of rounding
}

function lostFraction(guide: MultimodeGuide, radius: number, wavelength: number): number {
  const { profileExponent, coreRadius, relativeIndexDifference, claddingIndex } = guide;
  const perDifference = (1 + 2 / profileExponent) / (2 * relativeIndexDifference);
  const wavenumber = (2 * Math.PI * claddingIndex) / wavelength;
  return perDifference * ((2 * coreRadius) / radius + (3 / (2 * wavenumber * radius)) ** (2 / 3));
}

/**
 * NA that a bent step-index multimode fibre has left for rays at its outer wall: √(NA² − 2·n₁²·a/R).
 *
 * @param radius of the bend to the fibre's axis, m
 * @throws {OutOfRange} if no meridional ray survives
 * @source ray picture, derived; equal to the first term of D. Gloge, Appl. Opt. 11, 2506 (1972)
 */
export function bentNumericalAperture(
  numericalAperture: number,
  coreIndex: number,
  coreRadius: number,
  radius: number,
): number {
  mustBePositive(numericalAperture, 'numericalAperture', 'a numerical aperture');
  mustBePositive(coreIndex, 'coreIndex', 'a refractive index');
  mustBePositive(coreRadius, 'coreRadius', 'a core radius');
  mustBePositive(radius, 'radius', 'a bend radius');
  const square = numericalAperture ** 2 - (2 * coreIndex ** 2 * coreRadius) / radius;
  if (square < 0) {
    throw new OutOfRange({
      where: 'radius',
      what: `no ray in its plane survives a bend of ${radius} m`,
      mend: `Bend to more than ${(2 * coreIndex ** 2 * coreRadius) / numericalAperture ** 2} m.`,
    });
  }
  return Math.sqrt(square);
}

function mustBeGuide(guide: MultimodeGuide, wavelength: number): void {
  mustBePositive(guide.coreRadius, 'coreRadius', 'a core radius');
  mustBePositive(guide.relativeIndexDifference, 'relativeIndexDifference', 'an index difference');
  mustBePositive(guide.claddingIndex, 'claddingIndex', 'a refractive index');
  mustBePositive(wavelength, 'wavelength', 'a wavelength');
  if (!(guide.profileExponent > 0)) {
    throw new OutOfRange({
      where: 'profileExponent',
      what: `${guide.profileExponent} is no profile`,
      mend: 'Give 2 for a parabola, Infinity for a step.',
    });
  }
}
