import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import type { CoherentBeam } from './gaussian-field.ts';

/**
 * A beam as it meets the facet plane: Gaussian, each axis with its own waist, waist position and M² (a Gaussian
 * Schell-model beam where M² > 1). SI; radii are 1/e² of intensity, half of D4σ.
 */
export interface FacetBeam extends CoherentBeam {
  /** M² along x' and y'. */
  readonly m2X: number;
  readonly m2Y: number;
}

/** @throws {OutOfRange} if a radius is not positive, M² below 1, or anything not finite */
export function mustBeFacetBeam(beam: FacetBeam): void {
  mustBePositive(beam.waistRadiusX, 'waistRadiusX', 'a waist radius');
  mustBePositive(beam.waistRadiusY, 'waistRadiusY', 'a waist radius');
  for (const key of ['m2X', 'm2Y'] as const) {
    if (!(beam[key] >= 1 && Number.isFinite(beam[key]))) {
      throw new OutOfRange({ where: key, what: `${beam[key]} is below 1`, mend: 'No beam has M² below 1; give 1 or more.' });
    }
  }
  for (const key of ['waistZX', 'waistZY', 'azimuth', 'offsetX', 'offsetY', 'tiltX', 'tiltY'] as const) {
    if (!Number.isFinite(beam[key])) {
      throw new OutOfRange({ where: key, what: `${beam[key]} is not finite`, mend: 'Give a finite number.' });
    }
  }
}

/** The same beam with every length in units of `length`. */
export function inUnitsOf(length: number, beam: FacetBeam): FacetBeam {
  return {
    waistRadiusX: beam.waistRadiusX / length,
    waistRadiusY: beam.waistRadiusY / length,
    waistZX: beam.waistZX / length,
    waistZY: beam.waistZY / length,
    azimuth: beam.azimuth,
    offsetX: beam.offsetX / length,
    offsetY: beam.offsetY / length,
    tiltX: beam.tiltX,
    tiltY: beam.tiltY,
    m2X: beam.m2X,
    m2Y: beam.m2Y,
  };
}
