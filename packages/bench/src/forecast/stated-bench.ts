import type { FacetBeam, Pupil } from '@coreward/optics';
import type { Launch } from '../launch/launch.ts';
import { Refusal } from '../refusal.ts';
import { writeValue } from '../units/write.ts';
import { stopTransmission } from './at-the-stop.ts';
import { type Budget, budgetOf } from './budget.ts';
import { asStated } from './draw.ts';
import {
  leastV,
  manyRays,
  modesTaker,
  modesUpTo,
  type Offer,
  raysTaker,
  scaled,
  type Taken,
  type Taker,
  takenByModes,
  takenByRays,
  takenBySampledRays,
} from './fibre-taker.ts';
import { type Meeting, meetingOf } from './meeting.ts';
import { type StatedFocus, statedFocus, summedUpTo } from './stated-focus.ts';

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
  /** A quick count of rays where an exact answer takes long (V above 30, of partly coherent beams above 15): for causes and tolerances; null elsewhere. */
  readonly countedRays: ((beam: FacetBeam, pupil: Pupil | null) => number) | null;
  readonly focus: StatedFocus;
}

/** Power error asked of the modes. */
const exactTolerance = 1e-7;

/** Up to this V a beam of any M² is summed in the time of a coherent one. */
const fewMatrices = 42;

/** Beyond, V times Hermite-Gauss members of a partly coherent beam that are still summed; more would take over a second. */
const mostWork = 2_000;

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

/**
 * The bench at its stated values, with the modes that all draws ask.
 *
 * @throws {Refusal} if such a fibre guides nothing
 */
export function statedBench(launch: Launch): StatedBench {
  const meeting = meetingOf(launch, asStated);
  mustHoldLight(meeting);
  const { vNumber, beam, wavelength, coreRadius, numericalAperture } = meeting;
  const { profile } = launch.fibre;
  const work = vNumber > fewMatrices ? vNumber * membersAcross(beam.m2X) * membersAcross(beam.m2Y) : 0;
  const taker = vNumber <= modesUpTo ? modesTaker(profile, vNumber) : raysTaker(profile, vNumber);
  const method = taker.set === null || work > mostWork ? 'rays' : 'modes';
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
    return (
      (takenByModes(taker.fundamentalSet, offerWith(offered, usedPupil), tolerance).fundamental ?? 0) * passed
    );
  };
  const focus = statedFocus(meeting, taker);
  const countedRays =
    vNumber <= summedUpTo(beam)
      ? null
      : (offered: FacetBeam, pupil: Pupil | null): number =>
          takenBySampledRays(profile, offerWith(offered, null), manyRays()).guided *
          stopTransmission(offered, pupil, wavelength);
  const exactly = (offered: FacetBeam, pupil: Pupil | null) => taken(offered, pupil, exactTolerance);
  const budget = budgetOf(
    launch,
    asStated,
    meeting,
    taker,
    focus,
    countedRays === null
      ? { taken: exactly, whole: null, setRight: null }
      : {
          taken: (offered, pupil) => ({
            guided: countedRays(offered, pupil),
            fundamental: null,
            powers: null,
          }),
          whole: exactly,
          setRight: null,
        },
  );
  return {
    meeting,
    taker,
    budget,
    method,
    taken,
    takenByFundamental,
    countedRays,
    focus,
  };
}
