/**
 * A coherent Gaussian in a transverse plane, astigmatic and skew as it likes: E = N exp(−rᵀMr + b·r).
 *
 * M is complex symmetric (its real part positive definite) and b complex; N makes the power 1. Lengths are in any
 * one unit, M in its inverse square and b in its inverse. The same form serves the angular spectrum: there r is the
 * transverse wave vector. Time factor exp(−iωt), so a beam that still converges has Im M < 0.
 */
export interface GaussianField {
  readonly mxxRe: number;
  readonly mxxIm: number;
  readonly mxyRe: number;
  readonly mxyIm: number;
  readonly myyRe: number;
  readonly myyIm: number;
  readonly bxRe: number;
  readonly bxIm: number;
  readonly byRe: number;
  readonly byIm: number;
}

/** One coherent Gaussian beam at a plane: along its own principal axes x', y', turned by `azimuth`. */
export interface CoherentBeam extends BeamAim {
  /** 1/e² radii of intensity at the two waists. */
  readonly waistRadiusX: number;
  readonly waistRadiusY: number;
  /** Waist minus plane along z, positive while the beam still converges. */
  readonly waistZX: number;
  readonly waistZY: number;
  /** From lab x to x', counter-clockwise, rad. */
  readonly azimuth: number;
}

/** Where a beam goes. */
export interface BeamAim {
  /** Where the axis pierces the plane, lab axes. */
  readonly offsetX: number;
  readonly offsetY: number;
  /** Direction sines of the axis, lab axes; they pivot about the piercing point. */
  readonly tiltX: number;
  readonly tiltY: number;
}

/**
 * The field of `beam` at the plane, in the same unit of length.
 *
 * Valid for paraxial light.
 *
 * @param waveNumber 2π/wavelength, in the inverse of that unit
 * @source H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966), complex beam parameter (from memory)
 */
export function fieldOf(beam: CoherentBeam, waveNumber: number): GaussianField {
  const { waistRadiusX, waistRadiusY, waistZX, waistZY, azimuth } = beam;
  // 1/(w²(1+iζ)) with ζ = −z/z_R and z_R = k w²/2
  const areaX = waistRadiusX * waistRadiusX;
  const areaY = waistRadiusY * waistRadiusY;
  const zetaX = (-2 * waistZX) / (waveNumber * areaX);
  const zetaY = (-2 * waistZY) / (waveNumber * areaY);
  const reX = 1 / (areaX * (1 + zetaX * zetaX));
  const reY = 1 / (areaY * (1 + zetaY * zetaY));
  const imX = -zetaX * reX;
  const imY = -zetaY * reY;
  const c = Math.cos(azimuth);
  const s = Math.sin(azimuth);
  const mxxRe = c * c * reX + s * s * reY;
  const mxxIm = c * c * imX + s * s * imY;
  const mxyRe = c * s * (reX - reY);
  const mxyIm = c * s * (imX - imY);
  const myyRe = s * s * reX + c * c * reY;
  const myyIm = s * s * imX + c * c * imY;
  const field = { mxxRe, mxxIm, mxyRe, mxyIm, myyRe, myyIm, bxRe: 0, bxIm: 0, byRe: 0, byIm: 0 };
  aimField(field, beam, waveNumber);
  return field;
}

/** Points a field of one's own elsewhere, in place: the members of a crowd differ by nothing else, and come by the ten thousand. */
export function aimField(
  field: { -readonly [Key in keyof GaussianField]: number },
  { offsetX, offsetY, tiltX, tiltY }: BeamAim,
  waveNumber: number,
): void {
  const { mxxRe, mxxIm, mxyRe, mxyIm, myyRe, myyIm } = field;
  field.bxRe = 2 * (mxxRe * offsetX + mxyRe * offsetY);
  field.bxIm = 2 * (mxxIm * offsetX + mxyIm * offsetY) + waveNumber * tiltX;
  field.byRe = 2 * (mxyRe * offsetX + myyRe * offsetY);
  field.byIm = 2 * (mxyIm * offsetX + myyIm * offsetY) + waveNumber * tiltY;
}

/** The angular spectrum of `field` as a field over the transverse wave vector: M⁻¹/4 and −(i/2)M⁻¹b. */
export function spectrumOf(field: GaussianField): GaussianField {
  const { mxxRe, mxxIm, mxyRe, mxyIm, myyRe, myyIm, bxRe, bxIm, byRe, byIm } = field;
  const detRe = mxxRe * myyRe - mxxIm * myyIm - (mxyRe * mxyRe - mxyIm * mxyIm);
  const detIm = mxxRe * myyIm + mxxIm * myyRe - 2 * mxyRe * mxyIm;
  const scale = 1 / (detRe * detRe + detIm * detIm);
  const iRe = detRe * scale;
  const iIm = -detIm * scale;
  // the inverse of a symmetric 2×2: swap the diagonal, negate the rest, divide by the determinant
  const axxRe = myyRe * iRe - myyIm * iIm;
  const axxIm = myyRe * iIm + myyIm * iRe;
  const axyRe = -(mxyRe * iRe - mxyIm * iIm);
  const axyIm = -(mxyRe * iIm + mxyIm * iRe);
  const ayyRe = mxxRe * iRe - mxxIm * iIm;
  const ayyIm = mxxRe * iIm + mxxIm * iRe;
  const cxRe = axxRe * bxRe - axxIm * bxIm + axyRe * byRe - axyIm * byIm;
  const cxIm = axxRe * bxIm + axxIm * bxRe + axyRe * byIm + axyIm * byRe;
  const cyRe = axyRe * bxRe - axyIm * bxIm + ayyRe * byRe - ayyIm * byIm;
  const cyIm = axyRe * bxIm + axyIm * bxRe + ayyRe * byIm + ayyIm * byRe;
  return {
    mxxRe: axxRe / 4,
    mxxIm: axxIm / 4,
    mxyRe: axyRe / 4,
    mxyIm: axyIm / 4,
    myyRe: ayyRe / 4,
    myyIm: ayyIm / 4,
    bxRe: cxIm / 2,
    bxIm: -cxRe / 2,
    byRe: cyIm / 2,
    byIm: -cyRe / 2,
  };
}

/** ln N of a field of power 1. */
export function logNormalisation(field: GaussianField): number {
  const { mxxRe, mxyRe, myyRe, bxRe, byRe } = field;
  const det = mxxRe * myyRe - mxyRe * mxyRe;
  const exponent = (bxRe * bxRe * myyRe - 2 * bxRe * byRe * mxyRe + byRe * byRe * mxxRe) / det;
  return 0.5 * Math.log((2 / Math.PI) * Math.sqrt(det)) - exponent / 4;
}

/** Where the intensity is highest, and the larger of the two 1/e² radii about it. */
export function footprintOf(field: GaussianField): {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
} {
  const { mxxRe, mxyRe, myyRe, bxRe, byRe } = field;
  const det = mxxRe * myyRe - mxyRe * mxyRe;
  const half = (mxxRe + myyRe) / 2;
  const smallest = half - Math.hypot((mxxRe - myyRe) / 2, mxyRe);
  return {
    x: (myyRe * bxRe - mxyRe * byRe) / (2 * det),
    y: (mxxRe * byRe - mxyRe * bxRe) / (2 * det),
    // half − hypot cancels for needle-like beams; det/largest does not
    radius: 1 / Math.sqrt(Math.max(smallest, det / (2 * half))),
  };
}
