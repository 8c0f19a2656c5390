import type { Launch } from '../launch/launch.ts';
import { asStated } from './draw.ts';
import { focalLengthFor } from './way-to-the-facet.ts';

/**
 * Above this numerical aperture of the light that arrives, the paraxial scalar model is out of its range: a cone of 0.4
 * bends the field's direction by 24°, and lens, polarisation and angle start to matter. Common practice, no source.
 */
export const paraxialUpTo = 0.4;

/**
 * How strongly the light converges on the facet, as a numerical aperture: 1/e² of intensity, or what the lens's clear
 * aperture lets through of it, whichever is less. Where the beam would need more than 1 no lens could make it.
 *
 * @param halfAngle of the beam as the lens makes it, paraxial, rad
 */
export function convergence(launch: Launch, halfAngle: number): number {
  const { collimator, laser } = launch;
  if (collimator === null || collimator.clearAperture === null) return halfAngle;
  const focalLength = focalLengthFor(collimator, laser.wavelength.value, asStated);
  return Math.min(halfAngle, collimator.clearAperture.value / 2 / Math.abs(focalLength));
}
