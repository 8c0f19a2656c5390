/**
 * A beam as it meets the facet, both axes and its aim: what a fibre is offered.
 *
 * The facet is the plane z = 0, light travels to +z, the fibre's centre is the origin. Offsets and tilts are along the
 * lab axes; the tilt pivots about the point where the beam's axis pierces the facet, not about waist or lens.
 */
import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import type { GaussianBeam } from './gaussian-beam.ts';
import { mustBeQuality } from './gaussian-beam.ts';

/** An elliptic, astigmatic, turned, decentred and tilted beam at the facet, in air. */
export interface FacetBeam {
  /** 1/e² radii of intensity at the two waists, along the beam's own axes, m. */
  readonly waistRadiusX: number;
  readonly waistRadiusY: number;
  /** Waist minus facet along the light, m: positive while the beam still converges at the facet. */
  readonly waistZX: number;
  readonly waistZY: number;
  /** M² on each axis. */
  readonly m2X: number;
  readonly m2Y: number;
  /** From lab x to the beam's own x axis, rad, counter-clockwise. */
  readonly azimuth: number;
  /** Where the beam's axis pierces the facet, m from the fibre's centre. */
  readonly offsetX: number;
  readonly offsetY: number;
  /** Direction sines of the beam's axis. */
  readonly tiltX: number;
  readonly tiltY: number;
}

/** Where a beam points, and how its own axes are turned. */
export type Aim = Pick<FacetBeam, 'azimuth' | 'offsetX' | 'offsetY' | 'tiltX' | 'tiltY'>;

/** Through the fibre's centre, along its axis, not turned. */
export const perfectAim: Aim = { azimuth: 0, offsetX: 0, offsetY: 0, tiltX: 0, tiltY: 0 };

/** The beam at the facet from its two axes, whose waist positions count from the facet. */
export function facetBeam(x: GaussianBeam, y: GaussianBeam, aim: Aim = perfectAim): FacetBeam {
  return {
    waistRadiusX: x.waistRadius,
    waistRadiusY: y.waistRadius,
    waistZX: x.waistPosition,
    waistZY: y.waistPosition,
    m2X: x.quality,
    m2Y: y.quality,
    ...aim,
  };
}

/** @throws {OutOfRange} unless sizes are positive, M² at least 1, and everything finite. */
export function mustBeFacetBeam(beam: FacetBeam, where: string): void {
  // overlaps come by the hundred thousand: words are made only for a beam that needs them
  if (!isFacetBeam(beam)) refuseFacetBeam(beam, where);
}

function isFacetBeam(beam: FacetBeam): boolean {
  const { waistRadiusX, waistRadiusY, m2X, m2Y } = beam;
  const rest =
    beam.waistZX + beam.waistZY + beam.azimuth + beam.offsetX + beam.offsetY + beam.tiltX + beam.tiltY;
  return (
    waistRadiusX > 0 &&
    waistRadiusY > 0 &&
    m2X >= 1 &&
    m2Y >= 1 &&
    Number.isFinite(waistRadiusX + waistRadiusY + m2X + m2Y + rest)
  );
}

function refuseFacetBeam(beam: FacetBeam, where: string): void {
  mustBePositive(beam.waistRadiusX, `${where} waistRadiusX`, 'a waist radius');
  mustBePositive(beam.waistRadiusY, `${where} waistRadiusY`, 'a waist radius');
  mustBeQuality(beam.m2X, `${where} m2X`);
  mustBeQuality(beam.m2Y, `${where} m2Y`);
  for (const key of ['waistZX', 'waistZY', 'azimuth', 'offsetX', 'offsetY', 'tiltX', 'tiltY'] as const) {
    if (!Number.isFinite(beam[key])) {
      throw new OutOfRange({
        where: `${where} ${key}`,
        what: `${beam[key]} is not a finite number`,
        mend: 'Give a finite value, 0 if there is none.',
      });
    }
  }
}
