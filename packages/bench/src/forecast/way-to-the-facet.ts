import {
  focalLengthAt,
  type Glass,
  glassNamed,
  normalReflectance,
  powerThroughAperture,
  refractiveIndex,
  roundApertureAtIncidence,
  straightTransmission,
  waistBehindLens,
} from '@coreward/optics';
import type { Collimator, Launch, OutputCollimator } from '../launch/launch.ts';
import { partId } from '../launch/part-id.ts';
import { asStated, type Draw } from './draw.ts';
import { laserBeam, radiiOf, type TravellingBeam, travelled } from './travelling-beam.ts';

/** A part that light meets before the lens, with what it lets on. */
export interface PartOnTheWay {
  readonly id: string;
  readonly label: string;
  readonly transmission: number;
  /** From the laser's exit, m. */
  readonly position: number;
  /** 1/e² radii of the beam there, m. */
  readonly radiusX: number;
  readonly radiusY: number;
}

/** How a screw's turn arrives at the last plane of the path: offset (m) and slope (rad) there, a rad of mirror tilt. */
export interface ScrewLever {
  readonly mirror: string;
  readonly axis: 'horizontal' | 'vertical';
  readonly offsetPerTilt: number;
  readonly slopePerTilt: number;
  /** Mirror tilt a turn, rad. */
  readonly tiltPerTurn: number;
}

/** The light as it arrives at the collimator's lens or, without one, at the facet. */
export interface Arrival {
  readonly wavelength: number;
  readonly beam: TravellingBeam;
  readonly parts: readonly PartOnTheWay[];
  /** Nearest mirror last. */
  readonly levers: readonly ScrewLever[];
  readonly pathLength: number;
}

/** The steepest incidence that is drawn, rad: a mirror placed by eye at 89° does not show its back. */
const steepest = (89.5 * Math.PI) / 180;

/**
 * The wavelength at which a glass is asked for its index. What is stated must be known of the glass; a draw of the doubt
 * that passes an end of its range by a few nanometres takes the index there.
 */
export function askedOf(glass: Glass, wavelength: number, draw: Draw): number {
  return draw === asStated ? wavelength : nearest(glass, wavelength);
}

/** The wavelength nearest to `wavelength` at which the glass is known. */
function nearest({ range: [shortest, longest] }: Glass, wavelength: number): number {
  return Math.max(shortest, Math.min(longest, wavelength));
}

/** What a part on the way is called in the ledger. */
type PartWords = Pick<PartOnTheWay, 'id' | 'label'>;

/** Words of a path, once for all of its draws. */
const wordsOfPaths = new WeakMap<Launch['path'], readonly PartWords[]>();

/** In the order in which `wayToTheLens` puts them. */
function wordsAlong(path: Launch['path']): readonly PartWords[] {
  const known = wordsOfPaths.get(path);
  if (known !== undefined) return known;
  const words = path.flatMap((element): readonly PartWords[] => {
    if (element.kind === 'space') return [];
    const { kind, name } = element;
    const itself = { id: `${kind}-${partId(name)}`, label: `${kind} ${name}` };
    const clips = (kind === 'mirror' || kind === 'lens') && element.clearAperture !== null;
    return clips ? [itself, { id: `clip-${partId(name)}`, label: `clipped at ${name}` }] : [itself];
  });
  wordsOfPaths.set(path, words);
  return words;
}

/** Follows the light from the laser's exit to the end of the path. */
export function wayToTheLens(launch: Launch, draw: Draw): Arrival {
  const wavelength = draw.at(launch.laser.wavelength);
  let beam = laserBeam(launch, draw);
  let position = 0;
  const parts: PartOnTheWay[] = [];
  const screws: Pick<ScrewLever, 'mirror' | 'axis' | 'tiltPerTurn'>[] = [];
  // what each screw's tilt has become so far, in arrays of its own: as fields of an object that begin at 0 and 2 and go on
  // as fractions, these two took a twentieth of a forecast
  const offsets: number[] = [];
  const slopes: number[] = [];
  const words = wordsAlong(launch.path);
  const put = (transmission: number) => {
    const { id, label } = words[parts.length]!;
    const { radiusX, radiusY } = radiiOf(beam);
    parts.push({ id, label, transmission, position, radiusX, radiusY });
  };
  for (const element of launch.path) {
    switch (element.kind) {
      case 'space': {
        const length = draw.at(element.length);
        position += length;
        beam = travelled(beam, length);
        for (let i = 0; i < offsets.length; i += 1) offsets[i] = offsets[i]! + length * slopes[i]!;
        break;
      }
      case 'mirror': {
        const angle = Math.min(steepest, Math.abs(draw.at(element.angle)));
        put(Math.min(1, draw.at(element.reflectance)));
        if (element.clearAperture !== null) {
          put(throughAperture(beam, draw.at(element.clearAperture) / 2, angle));
        }
        if (element.mount !== null) {
          const tiltPerTurn = draw.at(element.mount.pitch) / draw.at(element.mount.lever);
          const { name: mirror } = element;
          screws.push({ mirror, axis: 'horizontal', tiltPerTurn }, { mirror, axis: 'vertical', tiltPerTurn });
          offsets.push(0, 0);
          // a mirror turns the beam by twice its tilt in the plane of incidence, by 2 cos(angle) across it
          slopes.push(2, 2 * Math.cos(angle));
        }
        break;
      }
      case 'lens': {
        const focalLength = draw.at(element.focalLength);
        put(Math.min(1, draw.at(element.transmission)));
        if (element.clearAperture !== null) put(throughAperture(beam, draw.at(element.clearAperture) / 2, 0));
        beam = { ...beam, x: waistBehindLens(beam.x, focalLength), y: waistBehindLens(beam.y, focalLength) };
        for (let i = 0; i < slopes.length; i += 1) slopes[i] = slopes[i]! - offsets[i]! / focalLength;
        break;
      }
      case 'stop':
        put(throughAperture(beam, draw.at(element.diameter) / 2, 0));
        break;
      case 'filter':
        put(Math.min(1, draw.at(element.transmission)));
        break;
    }
  }
  return {
    wavelength,
    beam,
    parts,
    pathLength: position,
    levers: screws.map(({ mirror, axis, tiltPerTurn }, i) => ({
      mirror,
      axis,
      offsetPerTilt: offsets[i]!,
      slopePerTilt: slopes[i]!,
      tiltPerTurn,
    })),
  };
}

function throughAperture(beam: TravellingBeam, radius: number, incidence: number): number {
  const { radiusX, radiusY } = radiiOf(beam);
  const aperture = roundApertureAtIncidence(radius, incidence);
  // beyond 3.3 beam radii less than 4e-10 of the light is cut
  if (Math.min(aperture.semiAxisX, aperture.semiAxisY) > 3.3 * Math.max(radiusX, radiusY)) return 1;
  return powerThroughAperture({ radiusX, radiusY, azimuth: beam.azimuth, centreX: 0, centreY: 0 }, aperture);
}

/** Focal length of a collimator for some light, m. */
export function focalLengthFor(lens: Collimator | OutputCollimator, wavelength: number, draw: Draw): number {
  const focalLength = draw.at(lens.focalLength);
  if (lens.focalShift.kind === 'fixed' || lens.designWavelength === null) return focalLength;
  const glass = glassNamed(lens.focalShift.glass);
  const design = askedOf(glass, draw.at(lens.designWavelength), draw);
  return focalLengthAt(glass, focalLength, design, askedOf(glass, wavelength, draw));
}

/** What the surfaces of a lens let through. */
export function surfacesTransmission(
  lens: Collimator | OutputCollimator,
  wavelength: number,
  draw: Draw,
): number {
  const { count, reflectance } = lens.surfaces;
  if (count === 0) return 1;
  if (reflectance !== null) return straightTransmission(Math.min(1, draw.at(reflectance)), count);
  const { focalShift } = lens;
  if (focalShift.kind === 'fixed') {
    // a lens of unknown glass, or several: about the commonest crown, whose ends will do where it is not known itself
    const crown = glassNamed('N-BK7');
    return straightTransmission(
      normalReflectance(1, refractiveIndex(crown, nearest(crown, wavelength))),
      count,
    );
  }
  const glass = glassNamed(focalShift.glass);
  return straightTransmission(
    normalReflectance(1, refractiveIndex(glass, askedOf(glass, wavelength, draw))),
    count,
  );
}
