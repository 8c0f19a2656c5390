import {
  angledFacet,
  type FacetBeam,
  facetBeam,
  type GaussianBeam,
  glassNamed,
  type Pupil,
  perfectAim,
  refractiveIndex,
  waistBehindLens,
} from '@coreward/optics';
import { fibreGlass } from '../launch/known-light.ts';
import type { Launch } from '../launch/launch.ts';
import type { Entry } from '../quantity/quantity.ts';
import { pupilOf } from './at-the-stop.ts';
import type { Draw } from './draw.ts';
import { type Aimed, leftByHand, type MeetingLens } from './near-screws.ts';
import type { Arrival } from './way-to-the-facet.ts';
import { askedOf, focalLengthFor, wayToTheLens } from './way-to-the-facet.ts';

/** Polish of an angled end, rad. */
export const polishAngle = (8 * Math.PI) / 180;

/** Where and how beam and fibre meet in one draw. SI. */
export interface Meeting {
  readonly arrival: Arrival;
  readonly wavelength: number;
  readonly coreRadius: number;
  readonly numericalAperture: number;
  readonly vNumber: number;
  /** Index of the fibre's glass, for its facets and bends. */
  readonly index: number;
  /** The beam at the facet as the lens makes it, centred and straight, its waists counted from the *lens* (or, without a lens, from the end of the path). */
  readonly beam: FacetBeam;
  /** The same before an angled end has widened it. */
  readonly beamOutside: FacetBeam;
  /** What an angled end does to widths on the way in, along the beam's own axes and along lab x: 1 for a flat end. */
  readonly widening: { readonly along: { readonly x: number; readonly y: number }; readonly lab: number };
  readonly pupil: Pupil | null;
  readonly lens: MeetingLens | null;
  /** From the lens to the facet as the focus is set, m, `null` for the best focus (or 0 without a lens). */
  readonly setDistance: number | null;
  /** Facet minus focus position, m, as written; 0 if walked. */
  readonly defocus: number;
  readonly aim: Aimed;
}

function fibreIndex(material: Launch['fibre']['material'], wavelength: number, draw: Draw): number {
  const glass = glassNamed(fibreGlass[material]);
  return refractiveIndex(glass, askedOf(glass, wavelength, draw));
}

/**
 * The meeting in one draw; `distance` of the facet from the lens is decided by the focus.
 *
 * @param arrival where many launches share laser and path, it need not be followed again
 */
export function meetingOf(
  launch: Launch,
  draw: Draw,
  arrival: Arrival = wayToTheLens(launch, draw),
): Meeting {
  const { wavelength } = arrival;
  const coreRadius = draw.at(launch.fibre.coreDiameter) / 2;
  const numericalAperture = draw.at(launch.fibre.numericalAperture);
  const { collimator, misalignment } = launch;
  const index = fibreIndex(launch.fibre.material, wavelength, draw);
  const focalLength = collimator === null ? null : focalLengthFor(collimator, wavelength, draw);
  const behind = (axis: GaussianBeam) => (focalLength === null ? axis : waistBehindLens(axis, focalLength));
  const x = behind(arrival.beam.x);
  const y = behind(arrival.beam.y);
  const squeeze = launch.fibre.ends.in === 'angled 8°' ? angledFacet(polishAngle, index).anamorphicFactor : 1;
  const inside = (axis: GaussianBeam, share: number) => {
    // an angled end changes the width in its plane (x) by the squeeze on the way out, so by its inverse on the way in
    const width = squeeze ** -share;
    return { radius: axis.waistRadius * width, width };
  };
  const alongX = Math.cos(arrival.beam.azimuth) ** 2;
  const axisX = inside(x, alongX);
  const axisY = inside(y, 1 - alongX);
  const beamOutside = facetBeam(x, y, { ...perfectAim, azimuth: arrival.beam.azimuth });
  const beam: FacetBeam = {
    ...beamOutside,
    waistRadiusX: axisX.radius,
    waistRadiusY: axisY.radius,
  };
  const stopRadius =
    collimator?.clearAperture == null ? Number.POSITIVE_INFINITY : draw.at(collimator.clearAperture) / 2;
  const aberration = collimator === null ? 0 : draw.at(collimator.sphericalAberration);
  const defocus = misalignment === null ? 0 : draw.at(misalignment.defocus);
  const lens = focalLength === null ? null : { focalLength, stopRadius };
  const distance = setDistance(launch, draw);
  return {
    arrival,
    wavelength,
    coreRadius,
    numericalAperture,
    vNumber: (2 * Math.PI * coreRadius * numericalAperture) / wavelength,
    index,
    beam,
    beamOutside,
    widening: { along: { x: axisX.width, y: axisY.width }, lab: 1 / squeeze },
    lens,
    pupil: focalLength === null ? null : pupilOf(beam, focalLength, stopRadius, aberration, wavelength),
    setDistance: distance,
    defocus,
    aim:
      misalignment === null
        ? leftByHand({ arrival, lens, beam, setDistance: distance }, draw)
        : {
            offsetX: draw.at(misalignment.offsetX),
            offsetY: draw.at(misalignment.offsetY),
            tiltX: tiltOf(misalignment.tiltX, draw),
            tiltY: tiltOf(misalignment.tiltY, draw),
          },
  };
}

/** The steepest tilt that may be written, rad; a doubt about it is drawn no further, for a direction sine has an end. */
const steepestTilt = 0.5;

const tiltOf = (entry: Entry, draw: Draw): number =>
  Math.max(-steepestTilt, Math.min(steepestTilt, draw.at(entry)));

function setDistance(launch: Launch, draw: Draw): number | null {
  const { collimator } = launch;
  if (collimator === null) return 0;
  switch (collimator.focus.kind) {
    case 'best':
      return null;
    case 'distance':
      return draw.at(collimator.focus.distance);
    case 'wavelength':
      return focalLengthFor(collimator, draw.at(collimator.focus.wavelength), draw);
  }
}

/** The beam as the fibre sees it with the facet at a distance from the lens (or from the end of the path), aimed. */
export function beamAt(
  { beam, widening }: Pick<Meeting, 'beam' | 'widening'>,
  distance: number,
  aim: Aimed | null,
): FacetBeam {
  const { along, lab } = widening;
  // written out: to copy a beam and replace most of it takes three times as long, a hundred thousand times in a match
  return {
    waistRadiusX: beam.waistRadiusX,
    waistRadiusY: beam.waistRadiusY,
    // widths grow by the factor and angles shrink by it, so depths grow by its square
    waistZX: (beam.waistZX - distance) * along.x ** 2,
    waistZY: (beam.waistZY - distance) * along.y ** 2,
    m2X: beam.m2X,
    m2Y: beam.m2Y,
    azimuth: beam.azimuth,
    offsetX: (aim?.offsetX ?? 0) * lab,
    offsetY: aim?.offsetY ?? 0,
    tiltX: (aim?.tiltX ?? 0) / lab,
    tiltY: aim?.tiltY ?? 0,
  };
}
