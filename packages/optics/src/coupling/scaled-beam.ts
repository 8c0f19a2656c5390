import type { FacetBeam } from '../beam/facet-beam.ts';

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
