/** What leaves a fibre through a lens. Positions count from the lens, positive downstream. */
import type { GaussianBeam } from '../beam/gaussian-beam.ts';
import { mustBePositive } from '../out-of-range.ts';
import { waistBehindLens } from './waist-behind-lens.ts';

/** A fibre's end and the lens behind it. */
export interface FibreOutput {
  /** Vacuum wavelength, m. */
  readonly wavelength: number;
  /** 1/e² radius of intensity at the fibre's end, m: half the mode field diameter if the fibre is single-moded. */
  readonly modeRadius: number;
  /** M² of what leaves: 1 for one mode; V/2 for many that share the power evenly (a disc of radius a filling the NA). */
  readonly quality: number;
  /** Of the lens at this wavelength, m. */
  readonly focalLength: number;
  /** From the lens to the fibre's end, m: equal to the focal length for a collimated beam. */
  readonly tipDistance: number;
}

/**
 * The beam behind the output lens. Its waist lies in the far focus if the fibre's end stands in the near one.
 *
 * A lens set for other light is one whose tip distance is the focal length at that light. Set for red and used in the
 * blue, the tip stands outside the focus: the beam narrows to a small waist some way off, and spreads faster behind it.
 *
 * Paraxial, thin lens; the fibre's mode is taken as a Gaussian with its waist at the fibre's end.
 *
 * @throws {OutOfRange} if a size or distance is not positive, M² is below 1, or the focal length is zero
 * @source as `waistBehindLens`
 */
export function beamFromFibre({
  wavelength,
  modeRadius,
  quality,
  focalLength,
  tipDistance,
}: FibreOutput): GaussianBeam {
  mustBePositive(tipDistance, 'beamFromFibre tipDistance', 'a distance from lens to fibre');
  return waistBehindLens(
    { wavelength, waistRadius: modeRadius, waistPosition: -tipDistance, quality },
    focalLength,
  );
}
