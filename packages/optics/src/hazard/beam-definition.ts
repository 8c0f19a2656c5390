/*
 * Formulas of hazards use the 1/e (63 % of the power) diameter and full divergence; optics uses 1/e² (86.5 %) and often
 * half angles. Everything is converted here, once. The factors hold for widths and for angles alike, of a Gaussian.
 */
import { powerInsideCircle } from '../beam/intensity-profile.ts';
import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import type { Basis } from './evidence.ts';

/** Where on the profile a width or an angle was read, as a fraction of the peak. */
export type BeamDefinition = '1/e' | '1/e²' | '5 % of the peak' | 'none: a diffuse surface';

/**
 * 1/e width of a Gaussian from its 1/e² width; for full divergences, too. D4σ of a Gaussian is a 1/e² width.
 *
 * @source ANSI Z136.1-2007, p. 6, and FAA Order JO 7400.2, both as quoted elsewhere: the 1/e convention; √2 by mathematics
 */
export function width1eFromWidth1e2(width1e2: number): number {
  return width1e2 / Math.SQRT2;
}

/** 1/e width from the full width at half maximum: × 1.2011. @source exp(−4x²/d²) = ½: 1/√(ln 2) */
export function width1eFromFwhm(fullWidthAtHalfMaximum: number): number {
  return fullWidthAtHalfMaximum / Math.sqrt(Math.LN2);
}

/** 1/e² width from the full width at half maximum: × 1.6986. @source exp(−8x²/d²) = ½: √(2/ln 2) */
export function width1e2FromFwhm(fullWidthAtHalfMaximum: number): number {
  return fullWidthAtHalfMaximum * fwhmTo1e2;
}

/** √(2/ln 2) = 1.699: 1/e² diameter over FWHM. Looks like the 1.7 of multimode fibres and is something else. */
export const fwhmTo1e2 = Math.sqrt(2 / Math.LN2);
/** √(2 ln 2) = 1.177: FWHM over the 1/e² radius. */
export const fwhmPerRadius1e2 = Math.sqrt(2 * Math.LN2);
/** √(ln 20) = 1.731: 5 % radius over the 1/e radius of a Gaussian; the standards round it to 1.7. */
export const fivePercentTo1e = Math.sqrt(Math.log(20));
/** The same as the standards print it. */
export const printedFivePercentTo1e = 1.7;
/** √(ln(100)/2) = 1.517: 1 % angle over the 1/e² angle, for single-mode apertures quoted at 1 %. */
export const onePercentTo1e2 = Math.sqrt(Math.log(100) / 2);

/** Full 1/e divergence, rad, of a Gaussian from its 1/e² half angle, rad: × √2. @source identity of Gaussian beams */
export function fullDivergence1eFromHalfAngle1e2(halfAngle1e2: number): number {
  return Math.SQRT2 * halfAngle1e2;
}

/** 1/e² half angle, rad, from a half angle quoted at 1 % of the peak. @source √(ln(100)/2), mathematics */
export function halfAngle1e2FromHalfAngle1Percent(halfAngle1Percent: number): number {
  return halfAngle1Percent / onePercentTo1e2;
}

/**
 * Fraction of a Gaussian's power that goes through a centred round stop: 1 − exp(−(stop/d)²).
 *
 * @param diameter1e 1/e diameter of the beam, m
 * @param stopDiameter m
 * @throws {OutOfRange} if the beam has no width or the stop is negative
 * @source identity of Gaussian beams
 */
export function fractionThroughStop(diameter1e: number, stopDiameter: number): number {
  return powerInsideCircle(diameter1e / Math.SQRT2, stopDiameter / 2);
}

/**
 * Peak irradiance, W/m², of a Gaussian: 4P/(π d²), d at 1/e, m, P in W.
 *
 * @throws {OutOfRange} if the beam has no width, or the power is negative
 * @source identity of Gaussian beams
 */
export function peakIrradianceFrom1e(power: number, diameter1e: number): number {
  mustBePositive(diameter1e, 'diameter1e', 'a 1/e diameter');
  mustBePower(power);
  return (4 * power) / (Math.PI * diameter1e ** 2);
}

/**
 * Irradiance, W/m², averaged over a centred round stop; power in W, diameters in m.
 *
 * @throws {OutOfRange} if the beam has no width, the stop is not above zero, or the power is negative
 * @source as `fractionThroughStop`
 */
export function averageIrradianceFrom1e(power: number, diameter1e: number, stopDiameter: number): number {
  mustBePositive(stopDiameter, 'stopDiameter', 'the diameter of a stop');
  mustBePower(power);
  return (power * fractionThroughStop(diameter1e, stopDiameter)) / ((Math.PI / 4) * stopDiameter ** 2);
}

/**
 * Real diode beams are no Gaussians and have hot spots; grains stand out of the far field of a multimode fibre. Multiply
 * the power by this, and say so.
 */
export const hotSpotFactor: { readonly value: number; readonly basis: Basis } = {
  value: 2,
  basis: { evidence: 'proposal', source: 'our proposal: a factor of 2 for beams that are no Gaussians' },
};

/** @throws {OutOfRange} unless a power (W) is finite and not negative */
export function mustBePower(power: number): void {
  if (power >= 0 && Number.isFinite(power)) return;
  throw new OutOfRange({
    where: 'power',
    what: `${power} W is no power`,
    mend: 'Give the highest power the driver can reach, 0 or more, in watts.',
  });
}
