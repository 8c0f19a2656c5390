/** How much of one Gaussian beam goes into another, or into a fibre mode taken as a Gaussian. */
import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import type { FacetBeam } from './facet-beam.ts';
import { mustBeFacetBeam } from './facet-beam.ts';

/** Upper triangle of a symmetric 4×4 covariance of (x, θx, y, θy), row by row. */
type Covariance = readonly [number, number, number, number, number, number, number, number, number, number];

/**
 * Fraction of the power of `beam` that couples into the Gaussian mode `mode`; the same the other way round.
 *
 * Both may be elliptic, astigmatic, turned, decentred, tilted and out of focus. Exact for Gaussians in the paraxial
 * range; M² above 1 is the Gaussian Schell model, which fixes what M² alone leaves open. A fibre's LP01 is only nearly
 * a Gaussian: 0.5 % of the peak is lost at V = 2.2, 5.6 % at V = 1.2, and the far tails differ more.
 * No Fresnel loss: overlap only. In air.
 *
 * @param wavelength vacuum, m
 * @throws {OutOfRange} if both have M² above 1: then the overlap of the two is not a coupling
 * @source overlap of two Wigner functions: η = (λ/2π)² det(S₁+S₂)^−½ exp(−½ Dᵀ(S₁+S₂)⁻¹D), S the 4×4 covariances of
 *   place and direction, D the difference in aim. Its special cases are those of W. B. Joyce and B. C. DeLoach,
 *   Appl. Opt. 23, 4187 (1984) and D. Marcuse, Bell Syst. Tech. J. 56, 703 (1977), from memory
 */
export function gaussianOverlap(wavelength: number, beam: FacetBeam, mode: FacetBeam): number {
  mustBePositive(wavelength, 'gaussianOverlap wavelength', 'a wavelength');
  mustBeFacetBeam(beam, 'gaussianOverlap beam');
  mustBeFacetBeam(mode, 'gaussianOverlap mode');
  if (!isClean(beam) && !isClean(mode)) {
    throw new OutOfRange({
      where: 'gaussianOverlap mode quality',
      what: 'both partners have M² above 1, and a coupling needs one of them to be a single mode',
      mend: 'Give the mode an M² of 1 on both axes.',
    });
  }
  // Places in units of the partners' mean waist, directions in that waist's divergence: the covariances come out near 1.
  const length = (mode.waistRadiusX * mode.waistRadiusY * beam.waistRadiusX * beam.waistRadiusY) ** 0.25;
  const angle = wavelength / (Math.PI * length);
  // The overlap is the same in every plane; at the mode's waist the numbers cancel least.
  const plane = (mode.waistZX + mode.waistZY) / 2;
  const first = covariance(beam, plane, wavelength, length);
  const second = covariance(mode, plane, wavelength, length);
  const sum = first.map((value, i) => value + second[i]!) as unknown as Covariance;
  const tiltX = beam.tiltX - mode.tiltX;
  const tiltY = beam.tiltY - mode.tiltY;
  const { determinant, quadraticForm } = solve(sum, [
    (beam.offsetX - mode.offsetX + plane * tiltX) / length,
    tiltX / angle,
    (beam.offsetY - mode.offsetY + plane * tiltY) / length,
    tiltY / angle,
  ]);
  // (λ/2π)² over (length·angle)² = (λ/π)²
  return Math.exp(-quadraticForm / 2) / (4 * Math.sqrt(determinant));
}

function isClean({ m2X, m2Y }: FacetBeam): boolean {
  return m2X === 1 && m2Y === 1;
}

/** The beam's covariance in `plane` (m behind the facet), places in units of `length`, directions in λ/(π·length). */
function covariance(beam: FacetBeam, plane: number, wavelength: number, length: number): Covariance {
  const rayleighUnit = (Math.PI * length ** 2) / wavelength;
  const own = (waistRadius: number, waistZ: number, quality: number) => {
    const waist = (waistRadius / (2 * length)) ** 2;
    const slope = ((quality * length) / (2 * waistRadius)) ** 2; // ⟨θθ⟩
    const drift = (plane - waistZ) / rayleighUnit; // downstream of the waist
    return [waist + drift ** 2 * slope, drift * slope, slope] as const;
  };
  const [xx, xt, tt] = own(beam.waistRadiusX, beam.waistZX, beam.m2X);
  const [yy, yt, ss] = own(beam.waistRadiusY, beam.waistZY, beam.m2Y);
  const cc = Math.cos(beam.azimuth) ** 2;
  const sn = Math.sin(beam.azimuth) ** 2;
  const cs = Math.cos(beam.azimuth) * Math.sin(beam.azimuth);
  return [
    cc * xx + sn * yy, // ⟨x x⟩
    cc * xt + sn * yt, // ⟨x θx⟩
    cs * (xx - yy), // ⟨x y⟩
    cs * (xt - yt), // ⟨x θy⟩
    cc * tt + sn * ss, // ⟨θx θx⟩
    cs * (xt - yt), // ⟨θx y⟩
    cs * (tt - ss), // ⟨θx θy⟩
    sn * xx + cc * yy, // ⟨y y⟩
    sn * xt + cc * yt, // ⟨y θy⟩
    sn * tt + cc * ss, // ⟨θy θy⟩
  ];
}

/** Determinant of S and vᵀS⁻¹v, by Cholesky factors LLᵀ. */
function solve(
  [s00, s01, s02, s03, s11, s12, s13, s22, s23, s33]: Covariance,
  [v0, v1, v2, v3]: readonly [number, number, number, number],
): { determinant: number; quadraticForm: number } {
  const l00 = Math.sqrt(s00);
  const l10 = s01 / l00;
  const l20 = s02 / l00;
  const l30 = s03 / l00;
  const l11 = Math.sqrt(s11 - l10 * l10);
  const l21 = (s12 - l20 * l10) / l11;
  const l31 = (s13 - l30 * l10) / l11;
  const l22 = Math.sqrt(s22 - l20 * l20 - l21 * l21);
  const l32 = (s23 - l30 * l20 - l31 * l21) / l22;
  const l33 = Math.sqrt(s33 - l30 * l30 - l31 * l31 - l32 * l32);
  const u0 = v0 / l00;
  const u1 = (v1 - l10 * u0) / l11;
  const u2 = (v2 - l20 * u0 - l21 * u1) / l22;
  const u3 = (v3 - l30 * u0 - l31 * u1 - l32 * u2) / l33;
  return {
    determinant: (l00 * l11 * l22 * l33) ** 2,
    quadraticForm: u0 * u0 + u1 * u1 + u2 * u2 + u3 * u3,
  };
}
