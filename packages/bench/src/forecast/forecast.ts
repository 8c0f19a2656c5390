import {
  beamAlong,
  beamRadiusAt,
  countModes,
  lp11CutoffWavelength,
  modeSet,
  OutOfRange,
} from '@coreward/optics';
import { shortCautions } from '../caution/short-cautions.ts';
import type { Launch } from '../launch/launch.ts';
import { assumptionsOf } from './assumptions.ts';
import { arrivalHalfAngle } from './at-the-stop.ts';
import { type BestCoupling, type BestCouplings, bestCouplings } from './best-coupling.ts';
import { type Budget, hasEntry } from './budget.ts';
import { convergence, paraxialUpTo } from './convergence.ts';
import { doubtfulEntries } from './entries-of.ts';
import type {
  Expected,
  ExpectedCoupling,
  ExpectedFibre,
  ExpectedSpot,
  Forecast,
  LedgerEntry,
  OffAxis,
} from './expected.ts';
import { modeFields, outputBeam } from './far-end.ts';
import { leastV } from './fibre-taker.ts';
import type { Meeting } from './meeting.ts';
import { measurementsWorthTaking } from './next-measurement.ts';
import { handLimitOf, tolerancesFor } from './one-decibel.ts';
import { outOfRangeRefusal } from './out-of-range-refusal.ts';
import { remarksOn } from './remarks.ts';
import { inOrder, quantileAmong, type Spread, type SpreadOptions, spreadOf, usualDraws } from './spread.ts';
import { type StatedBench, statedBench } from './stated-bench.ts';
import type { Told } from './told.ts';

/**
 * What to expect of a launch, decibel by decibel, with its doubt.
 *
 * @throws {Refusal} where the document asks for light or parts outside what the formulas know; `where` is the key
 */
export function forecast(launch: Launch, options: SpreadOptions = usualDraws): Forecast {
  try {
    return forecastOf(launch, options);
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    throw outOfRangeRefusal(launch, error);
  }
}

function forecastOf(launch: Launch, options: SpreadOptions): Forecast {
  const bench = statedBench(launch);
  const spread = spreadOf(launch, doubtfulEntries(launch), bench, options);
  const { budget } = bench;
  const among = (of: (budget: Budget) => number, value: number): Expected =>
    interval(spread, (draw) => of(draw.budget), value);
  const power = launch.laser.power.value;
  const outputPower = interval(spread, (draw) => draw.power * draw.budget.output, power * budget.output);
  const out = outputBeam(launch, bench);
  const best = bestCouplings(bench);
  const coupling = couplingOf(launch, bench, spread, best);
  const tolerances = {
    guided: tolerancesFor(bench, best.guided, 'guided') ?? {
      offsetFor1dB: null,
      tiltFor1dB: null,
      defocusFor1dB: null,
      screws: [],
    },
    fundamental: tolerancesFor(bench, best.fundamental, 'fundamental'),
    handLimit: handLimitOf(bench, best.fundamental, 'fundamental'),
    handLimitGuided: handLimitOf(bench, best.guided, 'guided'),
  };
  const meter = {
    reading: interval(
      spread,
      (draw) => draw.power * (draw.budget.output + draw.budget.claddingAtFarEnd),
      power * (budget.output + budget.claddingAtFarEnd),
    ),
    guided: outputPower,
    // a hundredth of what is guided would be taken for a better peak
    claddingReaches:
      quantileAmong(
        inOrder(
          spread.draws.map(({ budget: drawn }) => drawn.claddingAtFarEnd / Math.max(drawn.output, 1e-12)),
        ),
        0.95,
      ) > 0.01,
  };
  const parts: Told = {
    launch,
    fibre: fibreOf(bench, spread),
    facet: spotOf(bench),
    coupling,
    ledger: ledgerOf(bench, spread),
    notGuided: {
      beforeFacet: budget.beforeFacet,
      reflected: budget.reflected,
      cladding: budget.cladding,
      beyondCladding: budget.beyondCladding,
    },
    meter,
    tolerances,
    output: {
      power: outputPower,
      fractionOfLaser: among(({ output }) => output, budget.output),
      diameter: out.diameter,
      fullDivergence: out.fullDivergence,
      collimated: launch.output !== null,
      shape: out.shape,
    },
    nextMeasurement: measurementsWorthTaking(spread),
    cautions: shortCautions(launch),
    assumptions: assumptionsOf(launch, bench),
  };
  return { ...parts, remarks: remarksOn(parts, bench) };
}

function interval(spread: Spread, of: (draw: Spread['draws'][number]) => number, value: number): Expected {
  return { value, ...endsAmong(spread.draws.map(of)) };
}

function ledgerOf({ budget }: StatedBench, spread: Spread): readonly LedgerEntry[] {
  // what is left of each draw's own laser, entry by entry
  const left = spread.draws.map(({ power }) => power);
  const ledger = budget.losses.map(({ id, group, label, transmission }, i): LedgerEntry => {
    const passed = spread.draws.map((draw) => draw.budget.losses[i]!.transmission);
    passed.forEach((share, draw) => {
      left[draw] = left[draw]! * share;
    });
    return { id, group, label, transmission, ...endsAmong(passed), left: endsAmong(left) };
  });
  return ledger.filter(hasEntry);
}

/** Where nine draws in ten lie. */
function endsAmong(values: readonly number[]): { readonly low: number; readonly high: number } {
  const sorted = inOrder(values);
  return { low: quantileAmong(sorted, 0.05), high: quantileAmong(sorted, 0.95) };
}

function couplingOf(
  launch: Launch,
  bench: StatedBench,
  spread: Spread,
  best: BestCouplings,
): ExpectedCoupling {
  const { chain } = bench.budget;
  const guidedInterval = interval(spread, (draw) => draw.budget.chain.guided, chain.guided);
  const known = spread.draws.every((draw) => draw.budget.chain.fundamental !== null);
  const fundamentalInterval = known
    ? interval(spread, (draw) => draw.budget.chain.fundamental ?? 0, chain.fundamental ?? 0)
    : null;
  return {
    guided: chain.guided,
    fundamental: chain.fundamental,
    bestGuided: best.guided.share,
    bestFundamental: best.fundamental?.share ?? null,
    bestGuidedAt: offAxis(best.guided, bench.meeting),
    guidedInterval,
    fundamentalInterval,
    method: bench.method,
    methodNote:
      convergence(launch, arrivalHalfAngle(bench.meeting.beamOutside, bench.meeting.wavelength)) >
      paraxialUpTo
        ? 'a paraxial scalar model, out of its range for light focused so strongly'
        : bench.method === 'modes'
          ? 'overlap with every guided mode; the paraxial model is right to about one part in a thousand'
          : 'share of rays inside core and aperture; right to 0.01 % for a centred beam, up to 5 % low at the core’s edge',
    aim: launch.misalignment === null ? 'walked by hand' : 'as written',
  };
}

/** The aim of the optimum, if it lies beside the axis by more than anyone would call on it. */
function offAxis(best: BestCoupling, { coreRadius, numericalAperture }: Meeting): OffAxis | null {
  const { offsetX, offsetY, tiltX, tiltY } = best.beam;
  const beside = Math.hypot(offsetX, offsetY) / coreRadius + Math.hypot(tiltX, tiltY) / numericalAperture;
  return beside < 0.1 ? null : { offsetX, offsetY, tiltX, tiltY };
}

function fibreOf(bench: StatedBench, spread: Spread): ExpectedFibre {
  const { meeting, taker } = bench;
  const vNumber = interval(spread, (draw) => draw.vNumber, meeting.vNumber);
  const fields = modeFields(bench);
  const counted = taker.set === null ? null : countModes(taker.set.modes);
  return {
    vNumber,
    lpModes: counted?.lpModes ?? null,
    modesWithOrientation: counted?.withOrientation ?? null,
    lpModesRange:
      counted === null
        ? null
        : [
            lpModesAt(bench, counted.lpModes, Math.min(vNumber.low, meeting.vNumber)),
            lpModesAt(bench, counted.lpModes, Math.max(vNumber.high, meeting.vNumber)),
          ],
    cutoffWavelength: lp11CutoffWavelength(meeting, taker.profile),
    modeFieldDiameter: fields.petermann2,
    bestSpotDiameter: fields.best,
  };
}

/** LP modes at another V; of very many, by the square of V. */
function lpModesAt({ taker }: StatedBench, here: number, vNumber: number): number {
  if (vNumber === taker.vNumber) return here;
  if (vNumber > 30) return Math.round(here * (vNumber / taker.vNumber) ** 2);
  return modeSet(taker.profile, Math.max(leastV, vNumber)).modes.length;
}

function spotOf({ meeting, budget }: StatedBench): ExpectedSpot {
  const { beamOutside: beam, wavelength } = meeting;
  const own = (waistRadius: number, waistZ: number, quality: number) => ({
    wavelength,
    waistRadius,
    waistPosition: waistZ - budget.distance,
    quality,
  });
  const ownX = own(beam.waistRadiusX, beam.waistZX, beam.m2X);
  const ownY = own(beam.waistRadiusY, beam.waistZY, beam.m2Y);
  // from the beam's own axes to those of the lab
  const x = beamAlong(ownX, ownY, -beam.azimuth);
  const y = beamAlong(ownX, ownY, Math.PI / 2 - beam.azimuth);
  return {
    spotDiameterX: 2 * beamRadiusAt(x, 0),
    spotDiameterY: 2 * beamRadiusAt(y, 0),
    waistOffsetX: x.waistPosition,
    waistOffsetY: y.waistPosition,
    waistDiameterX: 2 * x.waistRadius,
    waistDiameterY: 2 * y.waistRadius,
    halfAngle: arrivalHalfAngle(beam, wavelength),
  };
}
