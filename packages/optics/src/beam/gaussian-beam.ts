/**
 * A Gaussian beam of quality M² on one transverse axis; an astigmatic beam is two of these.
 *
 * Positions count downstream from a plane the caller chooses (the laser's exit, a lens, the facet). A waist at a
 * positive position therefore lies ahead: the beam still converges at that plane.
 */
import { mustBePositive, OutOfRange } from '../out-of-range.ts';

/**
 * One transverse axis of a beam; an astigmatic beam is two of these. M² counts as a Gaussian beam that spreads M²
 * times as fast.
 */
export interface GaussianBeam {
  /** Vacuum wavelength, m. */
  readonly wavelength: number;
  /** 1/e² radius of intensity at the waist, m: two standard deviations, so half of D4σ whatever M² is. */
  readonly waistRadius: number;
  /** From the plane of reference to the waist, m; positive downstream. */
  readonly waistPosition: number;
  /** M² on this axis: 1 for a clean Gaussian, never below. */
  readonly quality: number;
  /** Refractive index of the medium the beam is in; left out: 1, air or vacuum. */
  readonly mediumIndex?: number;
}

/** @throws {OutOfRange} unless the beam could exist: positive finite sizes, M² not below 1. */
export function mustBeBeam(beam: GaussianBeam, where: string): void {
  mustBePositive(beam.wavelength, `${where} wavelength`, 'a wavelength');
  mustBePositive(beam.waistRadius, `${where} waistRadius`, 'a waist radius');
  mustBePositive(beam.mediumIndex ?? 1, `${where} mediumIndex`, 'a refractive index');
  if (!Number.isFinite(beam.waistPosition)) {
    throw new OutOfRange({
      where: `${where} waistPosition`,
      what: `${beam.waistPosition} is not a position`,
      mend: 'Give a finite distance in metres, positive downstream.',
    });
  }
  mustBeQuality(beam.quality, where);
}

/** @throws {OutOfRange} unless `quality` is finite and at least 1. */
export function mustBeQuality(quality: number, where: string): void {
  if (!(quality >= 1 && Number.isFinite(quality))) {
    throw new OutOfRange({
      where: `${where} quality`,
      what: `M² of ${quality} is below 1, the least that diffraction allows, or not finite`,
      mend: 'Give M² as 1 or more.',
    });
  }
}

/**
 * Distance from the waist over which the radius grows by √2, m: π n w₀²/(M² λ).
 *
 * @source H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966), with λ → M²λ/n for real beams in a medium; from memory
 */
export function rayleighRange(beam: GaussianBeam): number {
  return (Math.PI * (beam.mediumIndex ?? 1) * beam.waistRadius ** 2) / (beam.quality * beam.wavelength);
}

/**
 * 1/e² radius of intensity at a position, m. Paraxial.
 *
 * @param position m, from the same plane as `waistPosition`, positive downstream
 * @source H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966): w = w₀ √(1 + (z/z_R)²); from memory
 */
export function beamRadiusAt(beam: GaussianBeam, position: number): number {
  return beam.waistRadius * Math.sqrt(1 + ((position - beam.waistPosition) / rayleighRange(beam)) ** 2);
}

/**
 * Radius of curvature of the wavefront at a position, m: positive behind the waist, where the wave diverges;
 * negative before it; Infinity at the waist.
 *
 * @param position m, from the same plane as `waistPosition`, positive downstream
 * @source H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966): R = z + z_R²/z; from memory
 */
export function wavefrontRadiusAt(beam: GaussianBeam, position: number): number {
  const behindWaist = position - beam.waistPosition;
  return behindWaist === 0 ? Infinity : behindWaist + rayleighRange(beam) ** 2 / behindWaist;
}

/**
 * Gouy phase at a position, rad: 0 at the waist, from −π/2 far before to +π/2 far behind. For M² > 1 it is that of the
 * embedded Gaussian, which has the same Rayleigh range.
 *
 * @param position m, from the same plane as `waistPosition`, positive downstream
 * @source H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966): arctan(z/z_R); from memory
 */
export function gouyPhaseAt(beam: GaussianBeam, position: number): number {
  return Math.atan((position - beam.waistPosition) / rayleighRange(beam));
}

/**
 * Far-field half angle at 1/e² of intensity, rad, in the paraxial sense (the slope w/z): M² λ/(π n w₀).
 *
 * Below about 0.2 rad; beyond that slope, sine and angle part company.
 *
 * @source ISO 11146-1, from memory
 */
export function halfDivergence(beam: GaussianBeam): number {
  return (beam.quality * beam.wavelength) / (Math.PI * (beam.mediumIndex ?? 1) * beam.waistRadius);
}

/** Far-field full angle at 1/e² of intensity, rad: twice `halfDivergence`. */
export function fullDivergence(beam: GaussianBeam): number {
  return 2 * halfDivergence(beam);
}
