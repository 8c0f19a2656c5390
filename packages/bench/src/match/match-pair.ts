import {
  aberratedGaussianEstimate,
  type FacetBeam,
  gaussianOverlap,
  mates,
  raySample,
} from '@coreward/optics';
import { quickBestDistance } from '../forecast/best-focus.ts';
import { budgetOf } from '../forecast/budget.ts';
import { asStated, type Draw } from '../forecast/draw.ts';
import { doubtfulEntries } from '../forecast/entries-of.ts';
import {
  fewModedBelow,
  type Taken,
  type Taker,
  takenByModes,
  takenBySampledRays,
} from '../forecast/fibre-taker.ts';
import { arrivalHalfAngle, beamAt, type Meeting, meetingOf, stopTransmission } from '../forecast/meeting.ts';
import { matingText } from '../forecast/remarks-parts.ts';
import type { Launch } from '../launch/launch.ts';
import type { Entry } from '../quantity/quantity.ts';
import type { MatchedInterval, MatchedPair, MatchPurpose, PlugInBarrel } from './matched.ts';
import { reasonOf } from './reason.ts';

/** A match compares perfectly walked benches: the aim is the same for all. */
const straight: Draw = {
  at: asStated.at,
  chance: { ...asStated.chance, screwHorizontal: 0, screwVertical: 0 },
};

/** Power error that no ranking shows. */
const roughly = 1e-3;

const matchRays = raySample(512, 7);

/** One pair, refocused for its own light. */
export function matchPair(
  launch: Launch,
  names: { readonly laser: string; readonly collimator: string; readonly fibre: string },
  purpose: MatchPurpose,
  takerFor: (profile: 'step' | 'graded', vNumber: number) => Taker,
): MatchedPair {
  const meeting: Meeting = { ...meetingOf(launch, straight), setDistance: null };
  const taker = takerFor(launch.fibre.profile, meeting.vNumber);
  const bestDistance = launch.collimator === null ? 0 : quickBestDistance(meeting, taker);
  const aberration = aberrationShare(meeting, taker);
  const offer = (beam: FacetBeam): Taken => takenBy(meeting, taker, beam);
  // stop and aberration as one factor: the pupil integral would take seconds over a whole drawer
  const budget = budgetOf(
    launch,
    straight,
    meeting,
    taker,
    { distance: bestDistance, unaberrated: bestDistance },
    {
      taken: (beam, pupil) => (pupil === null ? offer(beam) : scaledBy(offer(beam), aberration)),
      whole: null,
    },
  );
  const { guided } = budget.chain;
  const fundamental = budget.chain.fundamental ?? 0;
  const wanted = purpose === 'total' ? guided : fundamental;
  const rest = guided === 0 ? 0 : budget.output / guided;
  const relative = relativeDoubts(launch);
  // the overlap at a spot one and a half standard deviations smaller and larger against the mode
  const at = (factor: number) => {
    const taken = offer(resized(beamAt(meeting, bestDistance, null), factor));
    return (purpose === 'total' ? taken.guided : (taken.fundamental ?? 0)) * aberration;
  };
  const plain = at(1);
  const size = Math.exp(1.645 * relative.spot);
  const overlaps = [plain, at(size), at(1 / size)];
  const share = plain === 0 ? 0 : wanted / plain;
  const overlapLow = Math.min(...overlaps) * share;
  const overlapHigh = Math.max(...overlaps) * share;
  const power = launch.laser.power.value;
  const connector = plugInBarrel(launch);
  return {
    ...names,
    score: widened(wanted * rest, overlapLow * rest, overlapHigh * rest, relative.losses),
    power: widened(
      power * guided * rest,
      power * (guided / (wanted || 1)) * overlapLow * rest,
      power * (guided / (wanted || 1)) * overlapHigh * rest,
      Math.hypot(relative.losses, relative.power),
    ),
    guided,
    fundamental,
    vNumber: meeting.vNumber,
    reason: reasonOf(launch, meeting, taker, budget),
    connector: connector.how,
    connectorNote: connector.note,
  };
}

function takenBy(meeting: Meeting, taker: Taker, beam: FacetBeam): Taken {
  const { wavelength, coreRadius, numericalAperture, vNumber } = meeting;
  const offer = { beam, pupil: null, wavelength, coreRadius, numericalAperture };
  if (taker.set !== null) return takenByModes(taker.set, offer, roughly);
  const { guided } = takenBySampledRays(taker.profile, offer, matchRays);
  return {
    guided,
    fundamental: gaussianOverlap(wavelength, beam, modeOfMany(taker.profile, vNumber, coreRadius)),
    powers: null,
  };
}

/** LP01 of a highly multimode fibre as a Gaussian: a fit far outside its range, good to a few per cent of its size. */
function modeOfMany(profile: 'step' | 'graded', vNumber: number, coreRadius: number): FacetBeam {
  const radius = coreRadius * (profile === 'step' ? 0.65 + 1.619 / vNumber ** 1.5 : Math.sqrt(2 / vNumber));
  return {
    waistRadiusX: radius,
    waistRadiusY: radius,
    waistZX: 0,
    waistZY: 0,
    m2X: 1,
    m2Y: 1,
    azimuth: 0,
    offsetX: 0,
    offsetY: 0,
    tiltX: 0,
    tiltY: 0,
  };
}

/** What stop and aberration leave, of the light that arrives at the stop. */
function aberrationShare(meeting: Meeting, taker: Taker): number {
  const { pupil, beam, wavelength, coreRadius, numericalAperture } = meeting;
  if (pupil === null) return 1;
  const passed = stopTransmission(beam, pupil, wavelength);
  const mode =
    taker.bestRadius === null || taker.vNumber >= fewModedBelow ? null : taker.bestRadius * coreRadius;
  // many modes take aberrated light as well as clean light, as long as it comes through
  if (mode === null) return passed;
  return aberratedGaussianEstimate({
    beamAngle: Math.min(arrivalHalfAngle(beam, wavelength), 4 * numericalAperture),
    modeAngle: wavelength / (Math.PI * mode),
    stop: pupil.stop,
    sphericalAberration: pupil.sphericalAberration,
    aberrationAt: pupil.aberrationAt,
  });
}

const scaledBy = (taken: Taken, factor: number): Taken => ({
  guided: taken.guided * factor,
  fundamental: taken.fundamental === null ? null : taken.fundamental * factor,
  powers: taken.powers,
});

const resized = (beam: FacetBeam, factor: number): FacetBeam => ({
  ...beam,
  waistRadiusX: beam.waistRadiusX * factor,
  waistRadiusY: beam.waistRadiusY * factor,
  waistZX: beam.waistZX * factor * factor,
  waistZY: beam.waistZY * factor * factor,
});

/** Relative standard deviations that matter: of the spot against the mode, of the losses, of the laser's power. */
function relativeDoubts(launch: Launch): {
  readonly spot: number;
  readonly losses: number;
  readonly power: number;
} {
  let spot = 0;
  let losses = 0;
  let power = 0;
  for (const entry of doubtfulEntries(launch)) {
    const relative = relativeOf(entry);
    if (
      /diameter$|divergence$|focal length$|quality$/.test(entry.key) &&
      !/^fibre\.cladding|aperture/.test(entry.key)
    )
      spot += relative ** 2;
    else if (entry.key === 'fibre.numerical aperture')
      spot += (0.5 * relative) ** 2; // half of it reaches the mode's size
    else if (/coating/.test(entry.key))
      losses += (2 * entry.uncertainty) ** 2; // what two surfaces reflect
    else if (/reflectance$|transmission$/.test(entry.key)) losses += relative ** 2;
    else if (/connectors\.between/.test(entry.key)) losses += entry.uncertainty ** 2;
    else if (entry.key === 'laser.power') power += relative ** 2;
  }
  if (launch.fibre.attenuation === null)
    losses += (0.3 * 0.01 * Math.min(100, launch.fibre.length.value)) ** 2;
  return { spot: Math.sqrt(spot), losses: Math.sqrt(losses), power: Math.sqrt(power) };
}

const relativeOf = ({ value, uncertainty }: Entry): number =>
  value === 0 ? 0 : Math.abs(uncertainty / value);

function widened(value: number, low: number, high: number, relative: number): MatchedInterval {
  const factor = 1.645 * relative;
  // doubts of the overlap and of the rest are independent: add them in quadrature, each side by itself
  const down = value === 0 ? 0 : Math.hypot(Math.max(0, 1 - low / value), factor);
  const up = value === 0 ? 0 : Math.hypot(Math.max(0, high / value - 1), factor);
  return { value, low: Math.max(0, value * (1 - Math.min(1, down))), high: value * (1 + up) };
}

function plugInBarrel(launch: Launch): { readonly how: PlugInBarrel; readonly note: string | null } {
  const barrel = launch.collimator?.connector ?? null;
  const plug = launch.fibre.connectors.in;
  if (barrel === null || plug === null) return { how: 'unknown', note: null };
  const note = matingText(plug, barrel);
  switch (mates(plug, barrel).kind) {
    case 'sleeve':
      return { how: note === null ? 'fits' : 'needs an adapter', note };
    case 'adapter':
      return { how: 'needs an adapter', note };
    case 'never':
      return { how: 'must not meet', note };
  }
}
