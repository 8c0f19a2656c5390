import { mustBePositive, OutOfRange } from '../out-of-range.ts';

/** The guiding part of a fibre, as its drawing gives it. */
export interface Guide {
  /** Core RADIUS a, m: half of what data sheets print. */
  readonly coreRadius: number;
  /** √(n_core² − n_cladding²), on the axis if graded; not the 5 % far-field NA of multimode data sheets. */
  readonly numericalAperture: number;
}

/**
 * V = 2πa·NA/λ, the normalised frequency.
 *
 * @param wavelength in vacuum, m
 * @throws {OutOfRange} if anything is not positive
 * @source D. Gloge, Appl. Opt. 10, 2252 (1971) (from memory)
 */
export function vNumber({ coreRadius, numericalAperture }: Guide, wavelength: number): number {
  mustBePositive(coreRadius, 'coreRadius', 'a core radius');
  mustBePositive(numericalAperture, 'numericalAperture', 'a numerical aperture');
  mustBePositive(wavelength, 'wavelength', 'a wavelength');
  return (2 * Math.PI * coreRadius * numericalAperture) / wavelength;
}

/** V at which LP11 appears: the first zero of J₀ for the step, the truncated parabola's own value for the graded core. */
export const lp11CutoffV = { step: 2.404825557695773, graded: 3.518050003972066 } as const;

/**
 * The theoretical wavelength above which only LP01 is guided, m. The cut-off of a data sheet, measured over metres of
 * bent fibre, is shorter by some per cent (common practice, no source).
 *
 * @throws {OutOfRange} if radius or aperture is not positive
 * @source step: D. Gloge, Appl. Opt. 10, 2252 (1971); graded: W. A. Gambling, D. N. Payne and H. Matsumura, Electron.
 *   Lett. 13, 139 (1977) (from memory; both values recomputed in the tests)
 */
export function lp11CutoffWavelength(guide: Guide, profile: keyof typeof lp11CutoffV): number {
  return vNumber(guide, 1) / lp11CutoffV[profile];
}

/**
 * Index on the core's axis from that of the cladding: √(n_cladding² + NA²).
 *
 * @throws {OutOfRange} if an argument is not positive
 * @source the definition NA² = n_core² − n_cladding²
 */
export function coreIndex(claddingIndex: number, numericalAperture: number): number {
  mustBePositive(claddingIndex, 'claddingIndex', 'an index');
  mustBePositive(numericalAperture, 'numericalAperture', 'a numerical aperture');
  return Math.hypot(claddingIndex, numericalAperture);
}

/**
 * n_eff = β/k of a mode from its normalised propagation constant b: √(n_cladding² + b·NA²).
 *
 * @param b from `normalisedPropagation`, 0 to 1
 * @throws {OutOfRange} if b is outside 0 … 1 or another argument not positive
 * @source definition of b: D. Gloge, Appl. Opt. 10, 2252 (1971) (from memory)
 */
export function effectiveIndex(b: number, claddingIndex: number, numericalAperture: number): number {
  if (!(b >= 0 && b <= 1)) {
    throw new OutOfRange({
      where: 'effectiveIndex b',
      what: `${b} is outside 0 … 1`,
      mend: 'Give the normalised propagation constant of a guided mode.',
    });
  }
  return coreIndex(claddingIndex, numericalAperture * Math.sqrt(b));
}
