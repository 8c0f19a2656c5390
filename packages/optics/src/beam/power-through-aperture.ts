/** What a round or elliptic hole lets through of an elliptic, turned and decentred Gaussian. */
import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import { powerInsideCircle } from './intensity-profile.ts';

/** An elliptic Gaussian spot in the plane of a hole whose centre is the origin. */
export interface EllipticSpot {
  /** 1/e² radii of intensity along the spot's own axes, m. */
  readonly radiusX: number;
  readonly radiusY: number;
  /** From the hole's x axis to the spot's, rad, counter-clockwise. */
  readonly azimuth: number;
  /** Centre of the spot, m, along the hole's axes. */
  readonly centreX: number;
  readonly centreY: number;
}

/** Half the clear width along x and y, m; equal for a round hole. */
export interface EllipticAperture {
  readonly semiAxisX: number;
  readonly semiAxisY: number;
}

/**
 * A round mirror or stop of this radius as the beam sees it, turned away in the x plane.
 *
 * @param radius m
 * @param incidence angle between beam and surface normal, rad; below π/2
 * @throws {OutOfRange} if the radius is not positive or the beam does not meet the face
 */
export function roundApertureAtIncidence(radius: number, incidence: number): EllipticAperture {
  mustBePositive(radius, 'roundApertureAtIncidence radius', 'the radius of an aperture');
  if (!(Math.abs(incidence) < Math.PI / 2)) {
    throw new OutOfRange({
      where: 'roundApertureAtIncidence incidence',
      what: `${incidence} rad is not an angle at which light meets the face`,
      mend: 'Give the angle from the normal, below π/2.',
    });
  }
  return { semiAxisX: radius * Math.cos(incidence), semiAxisY: radius };
}

/** Beyond this many standard deviations a two-dimensional Gaussian holds exp(−8.5²/2) = 2e-16 of its power. */
const farAway = 8.5;

/**
 * Fraction of the spot's power inside the hole: geometry only, as for a soft beam on a hard edge; to 1e-12.
 *
 * For M² > 1 it holds as far as the profile is still Gaussian, which M² does not tell.
 *
 * @throws {OutOfRange} if a radius or semi-axis is not positive, or the spot is nowhere
 * @source own derivation: in coordinates where the spot is round with unit variance, the power is the integral of
 *   (1 − exp(−r²/2))/2π over the angle under which the spot's centre sees the rim (Stokes). The integrand is periodic and
 *   entire along the rim, so the trapezoid rule converges faster than exponentially
 */
export function powerThroughAperture(spot: EllipticSpot, aperture: EllipticAperture): number {
  const { radiusX, radiusY, azimuth, centreX, centreY } = spot;
  const { semiAxisX, semiAxisY } = aperture;
  mustBePositive(radiusX, 'powerThroughAperture radiusX', 'a beam radius');
  mustBePositive(radiusY, 'powerThroughAperture radiusY', 'a beam radius');
  mustBePositive(semiAxisX, 'powerThroughAperture semiAxisX', 'half the width of an aperture');
  mustBePositive(semiAxisY, 'powerThroughAperture semiAxisY', 'half the width of an aperture');
  if (!Number.isFinite(azimuth + centreX + centreY)) {
    throw new OutOfRange({
      where: 'powerThroughAperture spot',
      what: `azimuth ${azimuth}, centre ${centreX}, ${centreY} is no place`,
      mend: 'Give finite values, 0 for a centred spot.',
    });
  }
  if (radiusX === radiusY && semiAxisX === semiAxisY && centreX === 0 && centreY === 0) {
    return powerInsideCircle(radiusX, semiAxisX);
  }
  const narrow = Math.min(semiAxisX, semiAxisY);
  const sigma = Math.max(radiusX, radiusY) / 2; // 1/e² radius is two standard deviations
  const eccentric = Math.hypot(centreX / semiAxisX, centreY / semiAxisY); // 1 on the rim
  if ((1 - eccentric) * narrow > farAway * sigma) return 1;
  if ((eccentric - 1) * narrow > farAway * sigma) return 0;
  return aroundTheRim(spot, aperture);
}

function aroundTheRim(spot: EllipticSpot, { semiAxisX, semiAxisY }: EllipticAperture): number {
  const sigmaX = spot.radiusX / 2;
  const sigmaY = spot.radiusY / 2;
  const cos = Math.cos(spot.azimuth);
  const sin = Math.sin(spot.azimuth);
  // rim − centre in the spot's whitened axes: (ux cos s + vx sin s − px, uy cos s + vy sin s − py)
  const ux = (cos * semiAxisX) / sigmaX;
  const vx = (sin * semiAxisY) / sigmaX;
  const uy = (-sin * semiAxisX) / sigmaY;
  const vy = (cos * semiAxisY) / sigmaY;
  const px = (cos * spot.centreX + sin * spot.centreY) / sigmaX;
  const py = (cos * spot.centreY - sin * spot.centreX) / sigmaY;
  // The error falls as exp(−steps²/2R²), R the largest radius of the whitened rim: 8 R makes it 1e-14.
  const reach = Math.hypot(ux, vx, uy, vy);
  const steps = 24 + Math.ceil(8 * reach);
  const turnCos = Math.cos((2 * Math.PI) / steps);
  const turnSin = Math.sin((2 * Math.PI) / steps);
  let c = 1;
  let s = 0;
  let sum = 0;
  for (let step = 0; step < steps; step++) {
    const x = ux * c + vx * s - px;
    const y = uy * c + vy * s - py;
    const swept = x * (vy * c - uy * s) - y * (vx * c - ux * s); // r² dφ/ds
    const half = (x * x + y * y) / 2;
    sum += half < 1e-9 ? swept / 2 : (-Math.expm1(-half) * swept) / (2 * half);
    const next = c * turnCos - s * turnSin;
    s = s * turnCos + c * turnSin;
    c = next;
  }
  return Math.min(1, Math.max(0, sum / steps));
}
