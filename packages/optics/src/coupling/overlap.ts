import { type FacetBeam, mustBeFacetBeam } from '../beam/facet-beam.ts';
import { mustBePositive } from '../out-of-range.ts';
import { aimField, type BeamAim, fieldOf } from './gaussian-field.ts';
import { hermiteCrowd, hermiteFactor } from './hermite-members.ts';
import { convergedHermitePowers } from './hermite-overlap.ts';
import { climbLadder, ladderScratch } from './mode-ladder.ts';
import type { ModeSet } from './mode-set.ts';
import { facetGrid, finenessFor } from './overlap-grids.ts';
import { cosinePower, modePower, projectPolar, samplesOn } from './polar-overlap.ts';
import type { Pupil } from './pupil.ts';
import { projectThroughPupil } from './pupil-overlap.ts';
import { inUnitsOf } from './scaled-beam.ts';
import { type TiltMember, tiltMembers } from './tilt-members.ts';

/** What one fibre takes from one beam. Fractions of the power that arrives (before the lens's stop, if there is one). */
export interface Overlap {
  /** In all guided modes. */
  readonly guided: number;
  /** In LP01. */
  readonly fundamental: number;
  /** Mode by mode, in the order of the mode set; both orientations together. */
  readonly powers: Float64Array;
  /** Of these, what is in cos lφ; null unless asked for. */
  readonly cosinePowers: Float64Array | null;
  readonly method: 'ladder' | 'hermite' | 'polar' | 'pupil';
}

/** How finely an overlap is computed and told. */
export interface OverlapOptions {
  /** Error of a power to aim for; 1e−8 unless told. */
  readonly tolerance?: number;
  /** Tell the two orientations apart; no unless told. */
  readonly orientations?: boolean;
}

/** Beyond this V the ladder's band is wide and its rungs are many: rings are faster, and M² > 1 is summed as Hermite-Gauss members. */
const ladderLimit = 30;

/** Product of both M² above which a beam has too many tilted members to count them. */
const nearlyCoherent = 6;

/** So many members for each mode climb in the time that a matrix takes (measured for M² up to 2.2 and 2 to 21 modes). */
const laddersPerMode = 18;

/** Up to so many modes (V = 45 in a step) a partly coherent beam is a matrix of Hermite-Gauss functions; beyond, these take long. */
const mostHermiteModes = 300;

/** Samples on all rings and members together beyond which matrices are quicker. */
const mostSamples = 60_000;

const scratch = ladderScratch();
let scratchAmplitudes = new Float64Array(0);

/**
 * Power of an astigmatic, turned, offset, tilted, defocused, partly coherent beam in every guided mode.
 *
 * Valid for paraxial light, weak guidance and one polarisation of the launch. No Fresnel loss. For V above about 150
 * use {@link phaseSpaceFraction}. Against the exact free-space propagator the paraxial model is off by up to 2e−3 at
 * numerical aperture 0.1 and 40 µm of defocus.
 *
 * @param coreRadius m
 * @param wavelength in vacuum, m
 * @param pupil the lens's stop and aberration, or null where neither matters
 * @throws {OutOfRange} for a beam that cannot be
 * @source A. W. Snyder and J. D. Love, Optical Waveguide Theory (1983), ch. 20 (from memory): |∫Eψ* dA|² of normalised
 *   fields; how it is computed is told in mode-ladder.ts, hermite-overlap.ts, polar-overlap.ts and pupil-overlap.ts
 */
export function overlapOf(
  set: ModeSet,
  coreRadius: number,
  wavelength: number,
  beam: FacetBeam,
  pupil: Pupil | null = null,
  { tolerance = 1e-8, orientations = false }: OverlapOptions = {},
): Overlap {
  mustBeFacetBeam(beam, 'overlapOf');
  mustBePositive(coreRadius, 'overlapOf coreRadius', 'a core radius');
  mustBePositive(wavelength, 'overlapOf wavelength', 'a wavelength');
  const scaled = inUnitsOf(coreRadius, beam);
  const waveNumber = (2 * Math.PI * coreRadius) / wavelength;
  const asked: Asked = {
    set,
    beam: scaled,
    waveNumber,
    tolerance,
    fineness: finenessFor(tolerance),
    orientations,
  };
  if (pupil !== null) return throughPupil(asked, pupil);
  const coherent = scaled.m2X === 1 && scaled.m2Y === 1;
  // matrices are made in the beam's own axes: of a turned beam the orientations of the lab are not found so
  const asMatrix = set.modes.length <= mostHermiteModes && !(orientations && scaled.azimuth !== 0);
  if (!coherent && asMatrix) return onTheLadder(asked, false) ?? byMatrices(asked);
  if (!coherent && set.vNumber > ladderLimit) return byMembersOnRings(asked);
  return onTheLadder(asked, true) ?? onRings(asked, asMatrix);
}

/** What is asked, in units of the core radius. */
interface Asked {
  readonly set: ModeSet;
  readonly beam: FacetBeam;
  readonly waveNumber: number;
  readonly tolerance: number;
  readonly fineness: number;
  readonly orientations: boolean;
}

/** Sums the powers of coherent members. */
function collector({ set, orientations }: Asked) {
  const count = set.modes.length;
  const powers = new Float64Array(count);
  const cosinePowers = orientations ? new Float64Array(count) : null;
  if (scratchAmplitudes.length < 4 * count) scratchAmplitudes = new Float64Array(4 * count);
  const amplitudes = scratchAmplitudes;
  return {
    /** For one member at a time. */
    amplitudes,
    collect(weight: number): void {
      for (let mode = 0; mode < count; mode += 1) {
        const { l } = set.modes[mode]!;
        powers[mode] = powers[mode]! + weight * modePower(amplitudes, mode, l);
        if (cosinePowers !== null) {
          cosinePowers[mode] = cosinePowers[mode]! + weight * cosinePower(amplitudes, mode, l);
        }
      }
    },
    told: (method: Overlap['method']) => told(set, powers, cosinePowers, method),
  };
}

function membersOf({ set, beam, waveNumber, tolerance }: Asked, steepest: number): readonly TiltMember[] {
  // a radius, in core radii, that covers where the modes are strong
  const reach = 1.4 + 1 / set.slowestDecay;
  const meeting = (waistRadius: number) => waistRadius / Math.sqrt(1 + (waistRadius / reach) ** 2);
  const members = tiltMembers(beam, waveNumber, meeting, tolerance, steepest);
  if (members.length === 1) return members;
  return members.filter(
    (member) => member.weight * mostOf(set, beam, member, waveNumber) >= tolerance / members.length,
  );
}

/**
 * Null where the ladder ends before some member, or where there are so many members that matrices are quicker.
 *
 * @param far whether to try the longer ladder as well
 */
function onTheLadder(asked: Asked, far: boolean): Overlap | null {
  const { set, beam, waveNumber, tolerance } = asked;
  if (set.vNumber > ladderLimit || (!far && beam.m2X * beam.m2Y > nearlyCoherent)) return null;
  const members = membersOf(asked, steepestFor(asked));
  if (!far && members.length > 20 + laddersPerMode * set.modes.length) return null;
  const { amplitudes, collect, told: tell } = collector(asked);
  const field = fieldOf(beam, waveNumber);
  for (const member of members) {
    const { weight } = member;
    aimField(field, member, waveNumber);
    // the sum of weight·2·√power·tolerance over the members stays below twice the tolerance
    const share = Math.min(1e-3, tolerance / (weight * members.length));
    const climbed =
      climbLadder(set.ladder(), field, amplitudes, scratch, share) ||
      (far && climbLadder(set.longLadder(), field, amplitudes, scratch, share));
    if (!climbed) return null;
    collect(weight);
  }
  return tell('ladder');
}

function byMatrices({ set, beam, waveNumber, tolerance, orientations }: Asked): Overlap {
  const { powers, cosinePowers } = convergedHermitePowers(set, beam, waveNumber, tolerance);
  return told(set, powers, orientations ? cosinePowers : null, 'hermite');
}

/** Hermite-Gauss members of a partly coherent beam, for modes too many to be matrices. */
function byMembersOnRings(asked: Asked): Overlap {
  const { set, beam, waveNumber, tolerance, fineness } = asked;
  const { amplitudes, collect, told: tell } = collector(asked);
  const crowd = hermiteCrowd(beam, tolerance);
  const field = fieldOf(crowd.embedded, waveNumber);
  const lobes = crowd.members.reduce((most, { orderX, orderY }) => Math.max(most, orderX + orderY), 0);
  const grid = facetGrid(set, [field], fineness, lobes);
  const table = set.fields(grid);
  for (const member of crowd.members) {
    amplitudes.fill(0);
    const polynomial = hermiteFactor(crowd, member, waveNumber);
    projectPolar({ field, grid, table, modes: set.modes, fineness, polynomial }, amplitudes);
    collect(member.weight);
  }
  return tell('polar');
}

/** Members the ladder does not hold share one grid, so that its tables are made once. */
function onRings(asked: Asked, asMatrix: boolean): Overlap {
  const { set, beam, waveNumber, fineness } = asked;
  const members = membersOf(asked, steepestFor(asked));
  const fields = members.map((member) => fieldOf({ ...beam, ...member }, waveNumber));
  const grid = facetGrid(set, fields, fineness);
  // a beam that is far off or far out of focus has more waves on the rings than its share is worth
  if (asMatrix && samplesOn(grid, fields, set.highestOrder, fineness) > mostSamples) return byMatrices(asked);
  const { amplitudes, collect, told: tell } = collector(asked);
  const table = set.fields(grid);
  members.forEach(({ weight }, i) => {
    amplitudes.fill(0);
    projectPolar({ field: fields[i]!, grid, table, modes: set.modes, fineness }, amplitudes);
    collect(weight);
  });
  return tell('polar');
}

function throughPupil(asked: Asked, pupil: Pupil): Overlap {
  const { set, beam, waveNumber, fineness, tolerance, orientations } = asked;
  const coherent = beam.m2X === 1 && beam.m2Y === 1;
  const straight = pupil.axisTiltX === 0 && pupil.axisTiltY === 0;
  if (
    !coherent &&
    straight &&
    set.modes.length <= mostHermiteModes &&
    !(orientations && beam.azimuth !== 0)
  ) {
    const { powers, cosinePowers } = convergedHermitePowers(set, beam, waveNumber, tolerance, pupil);
    return told(set, powers, orientations ? cosinePowers : null, 'pupil');
  }
  const { amplitudes, collect, told: tell } = collector(asked);
  for (const member of membersOf(asked, steepestFor(asked))) {
    amplitudes.fill(0);
    const field = fieldOf({ ...beam, ...member }, waveNumber);
    projectThroughPupil(set, field, pupil, waveNumber, amplitudes, fineness);
    collect(member.weight);
  }
  return tell('pupil');
}

/** Tilt, as a direction sine, beyond which a member has next to nothing for the modes. */
function steepestFor({ set, beam, waveNumber, tolerance }: Asked): number {
  const cone = 10 / Math.min(beam.waistRadiusX, beam.waistRadiusY);
  let steep = 1.5 * set.vNumber;
  while (set.tailBeyond(steep) > tolerance && steep < 20 * set.vNumber) steep *= 1.3;
  return (steep + cone) / waveNumber;
}

function told(
  { modes }: ModeSet,
  powers: Float64Array,
  cosinePowers: Float64Array | null,
  method: Overlap['method'],
): Overlap {
  let guided = 0;
  for (let mode = 0; mode < modes.length; mode += 1) guided += powers[mode]!;
  const [first] = modes;
  return {
    guided,
    // modes come deepest first, and nothing lies deeper than LP01
    fundamental: first !== undefined && first.l === 0 && first.m === 1 ? powers[0]! : 0,
    powers,
    cosinePowers,
    method,
  };
}

/** An upper bound of what the modes take of a beam that comes in steeply; 1 where it does not. */
function mostOf(
  set: ModeSet,
  { waistRadiusX, waistRadiusY }: FacetBeam,
  { tiltX, tiltY }: BeamAim,
  waveNumber: number,
): number {
  // beyond 5 radii of its cone a beam has e⁻⁵⁰ of its power
  const cone = 10 / Math.min(waistRadiusX, waistRadiusY);
  const nearest = waveNumber * Math.sqrt(tiltX * tiltX + tiltY * tiltY) - cone;
  return nearest < 1.5 * set.vNumber ? 1 : Math.min(1, set.tailBeyond(nearest));
}
