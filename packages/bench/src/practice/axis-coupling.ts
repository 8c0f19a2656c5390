/**
 * Coupling of a Gaussian beam into a Gaussian mode on one transverse axis, as a function of aim: exactly quadratic in the
 * logarithm. Offsets x and tilts t are at the facet, of the beam against the mode.
 */

/** What decides one axis. SI; radii are 1/e² of intensity. */
export interface AxisBeam {
  readonly wavelength: number;
  readonly modeRadius: number;
  readonly focalLength: number;
  /** Radius of the beam before the lens, taken as collimated there. */
  readonly radiusAtLens: number;
  /** M². */
  readonly quality: number;
  /** Facet minus waist along the light, m. */
  readonly defocus: number;
}

/** ln η = lnPeak − (xx·x² + 2·xt·x·t + tt·t²). */
export interface AxisCoupling {
  readonly lnPeak: number;
  /** 1/m², 1/m and 1. */
  readonly xx: number;
  readonly xt: number;
  readonly tt: number;
}

/**
 * One axis of the overlap of a Gaussian Schell beam with a Gaussian mode whose waist is at the facet.
 *
 * Valid for paraxial Gaussian light that no stop cuts. A fibre's LP01 is only nearly a Gaussian.
 *
 * @source overlap of two Wigner functions: η = (λ/2π) det(S)^−½ exp(−½ δᵀS⁻¹δ), S the sum of the two second-moment
 *   matrices of (x, t); derived here, tested against the direct integral
 */
export function axisCoupling(beam: AxisBeam): AxisCoupling {
  const { wavelength, modeRadius, focalLength, radiusAtLens, quality, defocus } = beam;
  const spot = (quality * wavelength * focalLength) / (Math.PI * radiusAtLens);
  const spotAngle = (quality * wavelength) / (Math.PI * spot);
  const modeAngle = wavelength / (Math.PI * modeRadius);
  const angleOfBeam = spotAngle ** 2 / 4;
  const sxx = modeRadius ** 2 / 4 + spot ** 2 / 4 + defocus ** 2 * angleOfBeam;
  const sxt = defocus * angleOfBeam;
  const stt = modeAngle ** 2 / 4 + angleOfBeam;
  const determinant = sxx * stt - sxt * sxt;
  return {
    lnPeak: Math.log(wavelength / (2 * Math.PI)) - Math.log(determinant) / 2,
    xx: stt / determinant / 2,
    xt: -sxt / determinant / 2,
    tt: sxx / determinant / 2,
  };
}
