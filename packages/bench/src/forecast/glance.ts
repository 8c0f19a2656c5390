import { type FacetBeam, OutOfRange, type Pupil } from '@coreward/optics';
import type { Launch } from '../launch/launch.ts';
import { Refusal } from '../refusal.ts';
import { stopTransmission } from './at-the-stop.ts';
import { type Budget, budgetOf, hasEntry } from './budget.ts';
import { asStated } from './draw.ts';
import { drawnFocus } from './drawn-focus.ts';
import type { LedgerEntry } from './expected.ts';
import {
  fewModedBelow,
  modesTaker,
  type Offer,
  raysTaker,
  scaled,
  spreadRays,
  type Taken,
  type Taker,
  takenByModes,
  takenBySampledRays,
  unlessTheSame,
} from './fibre-taker.ts';
import { type Meeting, meetingOf } from './meeting.ts';
import type { Asking } from './overlap-causes.ts';
import { mustHoldLight } from './stated-bench.ts';

/** A launch at its stated values and no more: what is quick enough to follow a hand. */
export interface Glance {
  readonly launch: Launch;
  readonly meeting: Meeting;
  readonly taker: Taker;
  readonly budget: Budget;
  /** As in a forecast, without a range: `low` and `high` are the value. */
  readonly ledger: readonly LedgerEntry[];
  /** W of guided light that leaves the far end. */
  readonly outputPower: number;
}

/** A focus looked for without one found before. */
const nothingFound = {
  distance: 0,
  unaberrated: 0,
  roundBeside: 0,
  beside: 0,
  roundBesideInDepths: 0,
  moved: null,
} as const;

/** Power error of an overlap that no shown digit betrays. */
const glanceTolerance = 1e-5;

/**
 * What the light does at the stated values, with the forecast's own budget. It agrees with the forecast to about 1e-4
 * where modes are summed, and to a few per cent where only rays are counted (V above 15). A lens's stop only cuts here and
 * its aberration is left out: the forecast that follows knows them.
 *
 * @param before an earlier look at much the same bench: its fibre is used again while V stays as it is
 * @throws {Refusal} where no formula covers the launch
 */
export function glance(launch: Launch, before: Glance | null = null): Glance {
  try {
    return glanceAt(launch, before);
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    throw new Refusal({
      where: `forecast of ${launch.name}`,
      what: `no formula covers ${error.where}: ${error.what}`,
      mend: error.mend,
    });
  }
}

function glanceAt(launch: Launch, before: Glance | null): Glance {
  const meeting = meetingOf(launch, asStated);
  mustHoldLight(meeting);
  const taker = takerFor(launch, meeting, before?.taker ?? null);
  const { wavelength, coreRadius, numericalAperture } = meeting;
  const plainly = unlessTheSame((beam) => {
    const offer: Offer = { beam, pupil: null, wavelength, coreRadius, numericalAperture };
    return taker.set === null
      ? takenBySampledRays(taker.profile, offer, spreadRays())
      : takenByModes(taker.set, offer, glanceTolerance);
  });
  const taken = (beam: FacetBeam, pupil: Pupil | null): Taken =>
    scaled(plainly(beam), stopTransmission(beam, pupil, wavelength));
  const ask: Asking = { taken, whole: null, setRight: null };
  const best = drawnFocus(meeting, taker, { ...nothingFound, suits: taker.suits });
  const budget = budgetOf(launch, asStated, meeting, taker, best, ask);
  return {
    launch,
    meeting,
    taker,
    budget,
    ledger: budget.losses
      .filter(hasEntry)
      .map((loss) => ({ ...loss, low: loss.transmission, high: loss.transmission, left: null })),
    outputPower: launch.laser.power.value * budget.output,
  };
}

function takerFor({ fibre }: Launch, { vNumber }: Meeting, before: Taker | null): Taker {
  const { profile } = fibre;
  // the profile of a taker is its set's: the same V in another profile is another fibre
  if (before !== null && before.vNumber === vNumber && before.profile === profile) return before;
  return vNumber < fewModedBelow ? modesTaker(profile, vNumber) : raysTaker(profile, vNumber);
}
