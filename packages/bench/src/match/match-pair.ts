import type { FacetBeam, Pupil } from '@coreward/optics';
import type { PartNames } from '../drawer/assemble-launch.ts';
import { shareOfPassed } from '../forecast/at-the-stop.ts';
import { isRound } from '../forecast/best-focus.ts';
import { type Budget, budgetOf } from '../forecast/budget.ts';
import { asStated } from '../forecast/draw.ts';
import { drawnBestDistance } from '../forecast/drawn-focus.ts';
import type { Taken } from '../forecast/fibre-taker.ts';
import { type Meeting, meetingOf } from '../forecast/meeting.ts';
import type { Offering } from '../forecast/overlap-causes.ts';
import { mustHoldLight } from '../forecast/stated-bench.ts';
import type { Launch } from '../launch/launch.ts';
import type { FastFibre } from './fast-fibre.ts';
import { intervalAbout, together } from './log-spread.ts';
import type { MatchedPair, MatchPurpose } from './matched.ts';
import { lensSpread, overlapSpread } from './pair-spread.ts';
import { plugInBarrel } from './plug-in-barrel.ts';
import type { Prepared } from './prepared.ts';
import { quickShare, throughPupil } from './quick-shares.ts';
import { type Costs, costsOf, largestReason } from './reason.ts';

/** A pair, and what it loses kind by kind, to be held against the best. */
export interface JudgedPair {
  readonly pair: MatchedPair;
  readonly costs: Costs;
}

/**
 * One pair, walked by hand.
 *
 * @param launch with its focus at its best
 * @throws {Refusal} or {OutOfRange} where no formula covers the pair
 */
export function matchPair(
  launch: Launch,
  names: PartNames,
  purpose: MatchPurpose,
  prepared: Prepared,
): JudgedPair {
  const { light } = prepared;
  const meeting = meetingOf(launch, asStated, light.arrival);
  mustHoldLight(meeting);
  const { fibre, doubt } = prepared.fibreOf(launch, meeting);
  const { budget, last } = shortBudget(launch, meeting, fibre, purpose);
  const spread = together([
    overlapSpread(launch, meeting, purpose, prepared, budget),
    lensSpread(launch, meeting, purpose, prepared),
    doubt.losses,
    light.path,
  ]);
  const atFacet = (share: number): number => shareOfPassed(share, budget.chain.stop);
  const { how, note } = plugInBarrel(launch);
  const taker = purpose === 'total' ? fibre.taker : fibre.fundamentalTaker;
  const costs = costsOf(launch, meeting, taker, budget);
  const pair: MatchedPair = {
    laser: names.laser,
    collimator: names.collimator,
    fibre: names.fibre,
    score: intervalAbout(budget.output, spread),
    power: intervalAbout(launch.laser.power.value * budget.output, together([spread, light.power])),
    guided: atFacet(last.guided),
    fundamental: atFacet(last.fundamental ?? 0),
    vNumber: meeting.vNumber,
    reason: largestReason(costs),
    connector: how,
    connectorNote: note,
  };
  return { pair, costs };
}

/** The ledger of the light that is wanted, and what the fibre takes in the end of all light and of LP01. */
function shortBudget(
  launch: Launch,
  meeting: Meeting,
  fibre: FastFibre,
  purpose: MatchPurpose,
): { readonly budget: Budget; readonly last: Taken } {
  const { pupil } = meeting;
  // stop and aberration as one factor: the pupil integral would take seconds over a whole drawer
  const passed = pupil === null ? { guided: 1, fundamental: 1 } : throughPupil(meeting, pupil, fibre);
  let last: Taken = { guided: 0, fundamental: 0, powers: null };
  const all: Offering = (beam: FacetBeam, by: Pupil | null) => {
    const plain = quickShare(meeting, fibre, beam);
    const guided = plain.guided * (by === null ? 1 : passed.guided);
    last = {
      ...plain,
      guided,
      fundamental: (plain.fundamental ?? 0) * (by === null ? 1 : passed.fundamental),
    };
    return last;
  };
  const taker = purpose === 'total' ? fibre.taker : fibre.fundamentalTaker;
  const alone: Offering = (beam, by) => {
    const guided = all(beam, by).fundamental ?? 0;
    return { guided, fundamental: guided, powers: taker.set === null ? null : Float64Array.of(guided) };
  };
  // the tables of round beams know their best focus already
  const distance = isRound(meeting.beam) ? meeting.beam.waistZX : drawnBestDistance(meeting, taker, 0);
  const budget = budgetOf(
    purpose === 'lp01' && taker.set === null ? unbent(launch) : launch,
    asStated,
    meeting,
    taker,
    { distance, unaberrated: distance, roundBeside: 0 },
    { taken: purpose === 'total' ? all : alone, whole: null, setRight: null },
  );
  return { budget, last };
}

/** Of a fibre of very many modes LP01 is the last that a bend takes, and the formula for all of them says nothing of it. */
const unbent = (launch: Launch): Launch =>
  launch.fibre.bends.length === 0 ? launch : { ...launch, fibre: { ...launch.fibre, bends: [] } };
