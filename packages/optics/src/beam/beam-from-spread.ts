/** Beams from what people know of them: a diameter somewhere and how fast it spreads, or where the waist lies. */
import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import { type GaussianBeam, mustBeQuality } from './gaussian-beam.ts';

/** A beam as a data sheet tells it: a radius somewhere and the angle it opens to, on one axis. */
export interface Spread {
  /** Vacuum wavelength, m. */
  readonly wavelength: number;
  /** 1/e² radius of intensity, m, seen at `position`. */
  readonly radius: number;
  /** Where that radius was seen, m; positive downstream. */
  readonly position: number;
  /** Far-field full angle at 1/e² of intensity, rad. */
  readonly fullDivergence: number;
  /** M². */
  readonly quality: number;
}

/**
 * The beam in air that has this radius here and spreads from here on: its waist lies at or before `position`.
 *
 * @throws {OutOfRange} if the radius is smaller than the waist such a divergence needs, M² λ/(π·half angle)
 * @source ISO 11146-1: w₀·θ = M² λ/π and w² = w₀² + θ² z²; from memory
 */
export function beamFromSpread({
  wavelength,
  radius,
  position,
  fullDivergence,
  quality,
}: Spread): GaussianBeam {
  mustBePositive(wavelength, 'beamFromSpread wavelength', 'a wavelength');
  mustBePositive(radius, 'beamFromSpread radius', 'a beam radius');
  mustBePositive(fullDivergence, 'beamFromSpread fullDivergence', 'a divergence');
  mustBeQuality(quality, 'beamFromSpread');
  const half = fullDivergence / 2;
  const waistRadius = (quality * wavelength) / (Math.PI * half);
  if (waistRadius > radius) {
    throw new OutOfRange({
      where: 'beamFromSpread radius',
      what: `a beam of full divergence ${fullDivergence} rad and M² ${quality} is nowhere narrower than ${waistRadius} m in radius, but ${radius} m is given`,
      mend: `Give a full divergence of at least ${(2 * quality * wavelength) / (Math.PI * radius)} rad, or a smaller M².`,
    });
  }
  // (r − w₀)(r + w₀) instead of r² − w₀²: near the waist the difference is all there is
  const behindWaist = Math.sqrt((radius - waistRadius) * (radius + waistRadius)) / half;
  return { wavelength, waistRadius, waistPosition: position - behindWaist, quality };
}

/** A beam of which a radius somewhere and the place of the waist are known, on one axis. */
export interface RadiusAndWaistPlace {
  /** Vacuum wavelength, m. */
  readonly wavelength: number;
  /** 1/e² radius of intensity, m, seen at `position`. */
  readonly radius: number;
  /** Where that radius was seen, m; positive downstream. */
  readonly position: number;
  /** Where the waist is, m; positive downstream. */
  readonly waistPosition: number;
  /** M². */
  readonly quality: number;
}

/**
 * The beam in air that has this radius at `position` and its waist at `waistPosition`. Two beams do, a wide waist that
 * has hardly spread and a narrow one that has spread far; this is the wide one, as out of a laser.
 *
 * @throws {OutOfRange} if even the beam that spreads least over that distance is wider than the radius
 * @source H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966): w² = w₀² + (M²λz/(π w₀))², solved for w₀; from memory
 */
export function beamWithWaistAt({
  wavelength,
  radius,
  position,
  waistPosition,
  quality,
}: RadiusAndWaistPlace): GaussianBeam {
  mustBePositive(wavelength, 'beamWithWaistAt wavelength', 'a wavelength');
  mustBePositive(radius, 'beamWithWaistAt radius', 'a beam radius');
  mustBeQuality(quality, 'beamWithWaistAt');
  const spread = (quality * wavelength * Math.abs(position - waistPosition)) / Math.PI; // w₀ times the growth
  if (2 * spread > radius ** 2) {
    throw new OutOfRange({
      where: 'beamWithWaistAt radius',
      what: `no beam of M² ${quality} with its waist ${Math.abs(position - waistPosition)} m away is as narrow as ${radius} m in radius here`,
      mend: `Give a radius of at least ${Math.sqrt(2 * spread)} m, or a waist position nearer to it.`,
    });
  }
  // the larger root of w₀⁴ − r²w₀² + spread² = 0
  const halfDiscriminant = Math.sqrt((radius ** 2 / 2 - spread) * (radius ** 2 / 2 + spread));
  return { wavelength, waistRadius: Math.sqrt(radius ** 2 / 2 + halfDiscriminant), waistPosition, quality };
}
