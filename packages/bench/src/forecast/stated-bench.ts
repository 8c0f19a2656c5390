import { type FacetBeam, gaussianOverlap, type Pupil, raySample } from '@coreward/optics';
import type { Launch } from '../launch/launch.ts';
import { Refusal } from '../refusal.ts';
import { writeValue } from '../units/write.ts';
import { exactBestDistance, focusShare, quickBestDistance } from './best-focus.ts';
import { type Budget, budgetOf } from './budget.ts';
import { asStated } from './draw.ts';
import {
  fewModedBelow,
  incoherentAbove,
  isIncoherent,
  leastV,
  modesTaker,
  modesUpTo,
  type Offer,
  raysTaker,
  roundBeam,
  scaled,
  spreadRays,
  type Taken,
  type Taker,
  takenByModes,
  takenByRays,
  takenBySampledRays,
  takenIncoherently,
} from './fibre-taker.ts';
import { beamAt, type Meeting, meetingOf, stopTransmission } from './meeting.ts';

/** Everything about the bench as stated, computed as exactly as the model allows. */
export interface StatedBench {
  readonly meeting: Meeting;
  readonly taker: Taker;
  readonly budget: Budget;
  readonly method: 'modes' | 'rays';
  /** What the fibre takes of a beam, of the light at the lens's stop; as exact as `method` is. */
  readonly taken: (beam: FacetBeam, pupil: Pupil | null, tolerance: number) => Taken;
  /** LP01 alone, which is quick for any fibre; null above V = 150. */
  readonly takenByFundamental: (beam: FacetBeam, pupil: Pupil | null, tolerance: number) => number | null;
  /** A quick count of rays where an exact answer takes long (V above 30): for tolerances; null elsewhere. */
  readonly countedRays: ((beam: FacetBeam, pupil: Pupil | null) => number) | null;
  readonly aberratedShift: number;
  readonly rayCorrection: number;
}

/** Power error asked of the modes. */
const exactTolerance = 1e-9;

/** Modes times members of a partly coherent beam that are still summed; more would take over a second. */
const mostWork = 12_000;

/** Hermite-Gauss members that are summed for LP01 of a highly multimode fibre. */
const mostMembers = 400;

const manyRays = raySample(16_384, 7);

/** How many Hermite-Gauss members a beam of this M² has on one axis until 1e−7 of its power is left. */
function membersAcross(m2: number): number {
  const ratio = (m2 - 1) / (m2 + 1);
  return ratio === 0 ? 1 : Math.ceil(Math.log(1e-8) / Math.log(ratio));
}

/** @throws {Refusal} if the fibre's V is below what the mode solvers cover */
export function mustHoldLight({ vNumber, wavelength, numericalAperture }: Meeting): void {
  if (vNumber >= leastV) return;
  // a hair more than V = 0.3 needs, for three digits are written
  const least = writeValue((1.01 * leastV * wavelength) / (Math.PI * numericalAperture), 'length');
  throw new Refusal({
    where: 'fibre.core diameter',
    what: `with this core and numerical aperture V is ${vNumber.toPrecision(2)} in this light: a mode so loosely held that no formula covers it`,
    mend: `Write \`core diameter: ${least}\` or more, or another fibre.`,
  });
}

export function statedBench(launch: Launch): StatedBench {
  const meeting = meetingOf(launch, asStated);
  mustHoldLight(meeting);
  const { vNumber, beam, wavelength, coreRadius, numericalAperture } = meeting;
  const { profile } = launch.fibre;
  const work = vNumber > 30 ? (vNumber * membersAcross(beam.m2X) * membersAcross(beam.m2Y)) / 2 : 0;
  const taker = vNumber <= modesUpTo ? modesTaker(profile, vNumber) : raysTaker(profile, vNumber);
  const incoherent = vNumber <= 30 && isIncoherent(beam, incoherentAbove.stated);
  const method = taker.set === null || work > mostWork || incoherent ? 'rays' : 'modes';
  const offerWith = (offered: FacetBeam, pupil: Pupil | null): Offer => ({
    beam: offered,
    pupil,
    wavelength,
    coreRadius,
    numericalAperture,
  });
  const taken = (offered: FacetBeam, pupil: Pupil | null, tolerance: number): Taken => {
    // above the few-moded the Fourier picture of the pupil costs seconds, and a stop is only a stop
    const usedPupil = vNumber <= 30 ? pupil : null;
    const passed = usedPupil === null ? stopTransmission(offered, pupil, wavelength) : 1;
    if (taker.set !== null && method === 'modes') {
      return scaled(takenByModes(taker.set, offerWith(offered, usedPupil), tolerance), passed);
    }
    if (incoherent) {
      const evenly = takenIncoherently(taker, offerWith(offered, null));
      const counted = takenByRays(profile, offerWith(offered, null)).guided;
      // no more than if every mode carried as much as LP01, no less than LP01 alone; between them the rays decide
      const guided = Math.max(evenly.fundamental ?? 0, Math.min(evenly.guided, counted));
      return scaled({ ...evenly, guided }, stopTransmission(offered, pupil, wavelength));
    }
    const rays = scaled(
      takenByRays(profile, offerWith(offered, null)),
      stopTransmission(offered, pupil, wavelength),
    );
    return { ...rays, fundamental: takenByFundamental(offered, pupil, tolerance) };
  };
  const takenByFundamental = (offered: FacetBeam, pupil: Pupil | null, tolerance: number): number | null => {
    if (taker.fundamentalSet === null) return null;
    const usedPupil = vNumber <= 30 ? pupil : null;
    const passed = usedPupil === null ? stopTransmission(offered, pupil, wavelength) : 1;
    if (incoherent) return taken(offered, pupil, tolerance).fundamental;
    if (vNumber > 30 && membersAcross(offered.m2X) * membersAcross(offered.m2Y) > mostMembers) {
      // so many members would take seconds; LP01 as its best Gaussian is right to a per cent or two of a small share
      const mode = roundBeam((taker.bestRadius ?? 1) * coreRadius, 1);
      return gaussianOverlap(wavelength, offered, mode) * passed;
    }
    return (
      (takenByModes(taker.fundamentalSet, offerWith(offered, usedPupil), tolerance).fundamental ?? 0) * passed
    );
  };
  const share = focusShare(
    taker,
    (offered) => offerWith(offered, vNumber <= 30 ? meeting.pupil : null),
    (offer) => takenByRays(profile, offer).guided,
  );
  const quick = quickBestDistance(meeting, taker);
  // a plateau of many modes has no sharp best focus: the least spot is as good as any
  const bestDistance =
    vNumber < fewModedBelow && !incoherent ? exactBestDistance(meeting, taker, share) : quick;
  const countedRays =
    vNumber <= 30
      ? null
      : (offered: FacetBeam, pupil: Pupil | null): number =>
          takenBySampledRays(profile, offerWith(offered, null), manyRays).guided *
          stopTransmission(offered, pupil, wavelength);
  const exactly = (offered: FacetBeam, pupil: Pupil | null) => taken(offered, pupil, exactTolerance);
  const budget = budgetOf(
    launch,
    asStated,
    meeting,
    taker,
    { distance: bestDistance, unaberrated: quick },
    countedRays === null
      ? { taken: exactly, whole: null }
      : {
          taken: (offered, pupil) => ({
            guided: countedRays(offered, pupil),
            fundamental: null,
            powers: null,
          }),
          whole: exactly,
        },
  );
  const aimed = beamAt(meeting, budget.distance, meeting.aim);
  const sampled = takenBySampledRays(profile, offerWith(aimed, null), spreadRays).guided;
  return {
    meeting,
    taker,
    budget,
    method,
    taken,
    takenByFundamental,
    countedRays,
    aberratedShift: bestDistance - quick,
    rayCorrection: incoherent
      ? budget.chain.guided / takenIncoherently(taker, offerWith(aimed, null)).guided
      : vNumber < fewModedBelow || sampled === 0
        ? 1
        : budget.chain.guided / sampled,
  };
}
