/** Widths of a Gaussian intensity profile, and what a centred round hole lets through. */
import { mustBePositive, OutOfRange } from '../out-of-range.ts';

/** Full width at half maximum over 1/e² radius: √(2 ln 2) = 1.1774. */
const fwhmPerRadius = Math.sqrt(2 * Math.LN2);

/** Full width at half maximum of intensity, m, of a Gaussian of this 1/e² radius, m. @source exp(−2r²/w²) = ½ at r = FWHM/2 */
export function fwhmFromRadius(radius: number): number {
  return fwhmPerRadius * radius;
}

/** 1/e² radius of intensity, m, of a Gaussian of this full width at half maximum, m. @source exp(−2r²/w²) = ½ at r = FWHM/2 */
export function radiusFromFwhm(fullWidthAtHalfMaximum: number): number {
  return fullWidthAtHalfMaximum / fwhmPerRadius;
}

/**
 * Fraction of the power of a round Gaussian (M² = 1) inside a centred circle; for M² > 1 it holds as far as the
 * profile is still Gaussian, which M² does not tell.
 *
 * @param beamRadius 1/e² radius of intensity, m
 * @param circleRadius m; 0 or more
 * @throws {OutOfRange} if the beam radius is not positive or the circle's is negative
 * @source integral of exp(−2r²/w²) over the circle: 1 − exp(−2a²/w²)
 */
export function powerInsideCircle(beamRadius: number, circleRadius: number): number {
  mustBePositive(beamRadius, 'powerInsideCircle beamRadius', 'a beam radius');
  if (!(circleRadius >= 0)) {
    throw new OutOfRange({
      where: 'powerInsideCircle circleRadius',
      what: `${circleRadius} m is not the radius of a circle`,
      mend: 'Give 0 or more, in metres.',
    });
  }
  return -Math.expm1(-2 * (circleRadius / beamRadius) ** 2);
}
