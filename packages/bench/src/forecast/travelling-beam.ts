/** The laser's beam, as drawn, at its exit and on from there. */
import { beamFromSpread, beamRadiusAt, beamWithWaistAt, type GaussianBeam } from '@coreward/optics';
import type { BeamAxis, Launch } from '../launch/launch.ts';
import type { Draw } from './draw.ts';

/** The beam on its way: both axes, waist positions counted from where it is now, downstream positive. */
export interface TravellingBeam {
  readonly x: GaussianBeam;
  readonly y: GaussianBeam;
  /** From lab x to the beam's x, rad. */
  readonly azimuth: number;
}

/** The beam at the laser's exit. */
export function laserBeam(launch: Launch, draw: Draw): TravellingBeam {
  const wavelength = draw.at(launch.laser.wavelength);
  const { beam } = launch.laser;
  switch (beam.kind) {
    case 'round': {
      const axis = axisOf(beam.axis, wavelength, draw);
      return { x: axis, y: axis, azimuth: 0 };
    }
    case 'elliptic':
      return {
        x: axisOf(beam.x, wavelength, draw),
        y: axisOf(beam.y, wavelength, draw),
        azimuth: draw.at(beam.azimuth),
      };
  }
}

function axisOf(axis: BeamAxis, wavelength: number, draw: Draw): GaussianBeam {
  const quality = Math.max(1, draw.at(axis.quality));
  switch (axis.kind) {
    case 'waist':
      return {
        wavelength,
        waistRadius: draw.at(axis.waistDiameter) / 2,
        waistPosition: draw.at(axis.waistPosition),
        quality,
      };
    case 'spread': {
      const position = draw.at(axis.at);
      const radius = draw.at(axis.diameter) / 2;
      const fullDivergence = draw.at(axis.fullDivergence);
      const waistRadius = (2 * quality * wavelength) / (Math.PI * fullDivergence);
      // within the doubt the two may contradict: the nearest beam there is has its waist at the place of the diameter
      if (waistRadius >= radius) return { wavelength, waistRadius: radius, waistPosition: position, quality };
      return beamFromSpread({ wavelength, radius, position, fullDivergence, quality });
    }
    case 'diameter': {
      const position = draw.at(axis.at);
      const least = Math.sqrt((2 * quality * wavelength * Math.abs(position)) / Math.PI);
      // a hair wider than the narrowest beam with its waist at the exit, where rounding would refuse it
      const radius = Math.max(draw.at(axis.diameter) / 2, least * (1 + 1e-9));
      return beamWithWaistAt({ wavelength, radius, position, waistPosition: 0, quality });
    }
  }
}

/** The same beam seen from a place further on: its waists count from there. `length` in m, positive downstream. */
export const travelled = (beam: TravellingBeam, length: number): TravellingBeam => ({
  ...beam,
  x: { ...beam.x, waistPosition: beam.x.waistPosition - length },
  y: { ...beam.y, waistPosition: beam.y.waistPosition - length },
});

/** 1/e² radii where the beam is now, m. */
export function radiiOf({ x, y }: TravellingBeam): { readonly radiusX: number; readonly radiusY: number } {
  return { radiusX: beamRadiusAt(x, 0), radiusY: beamRadiusAt(y, 0) };
}
