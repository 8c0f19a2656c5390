import { type FacetBeam, gaussianOverlap, overlapOf, type RaySample, raySample } from '@coreward/optics';
import {
  fewModedBelow,
  modesTaker,
  type Offer,
  raysTaker,
  roundBeam,
  type Taken,
  type Taker,
  takenByModes,
  takenBySampledRays,
} from '../forecast/fibre-taker.ts';
import type { Meeting } from '../forecast/meeting.ts';
import { type RoundShares, roundShares } from './round-shares.ts';

/** A fibre at one V, ready to be asked about thousands of beams. */
export interface FastFibre {
  /** For all guided light, and for LP01 as if it were the only mode. */
  readonly taker: Taker;
  readonly fundamentalTaker: Taker;
  /** Round beams of this M², centred, waist at the facet: right to 0.002. */
  readonly round: (m2: number) => RoundShares;
  /** The same right to 0.02, for what a doubt may do. */
  readonly roughly: (m2: number) => RoundShares;
  /** Any other beam, as the fibre sees it, without stop or aberration. */
  readonly other: (meeting: Meeting, beam: FacetBeam) => Taken;
}

/** How fine a table of round beams is: step in ln(size), error of a power, rays where modes are too many. */
interface Fineness {
  readonly step: number;
  readonly tolerance: number;
  readonly rays: RaySample;
}

const fine: Fineness = { step: 0.25, tolerance: 1e-3, rays: raySample(4096, 7) };
const rough: Fineness = { step: 0.5, tolerance: 1e-2, rays: raySample(1024, 7) };
const single: Fineness = { step: 0, tolerance: 1e-3, rays: raySample(512, 7) };

/** Rungs of the mode ladders: enough for that. */
const rungs = 32;

/** Of a round beam only ratios of lengths count: core radius 1, and V by way of the aperture. */
const unitWavelength = 0.01;

/** A spot so much smaller than what core and aperture take, or larger, in ln: from there shares go as the square. */
const tail = 1.75;

export function fastFibre(profile: 'step' | 'graded', vNumber: number): FastFibre {
  const taker = vNumber < fewModedBelow ? modesTaker(profile, vNumber, rungs) : raysTaker(profile, vNumber);
  const modeRadius = taker.bestRadius ?? modeRadiusOfMany(profile, vNumber);
  const take = (offer: Offer, fineness: Fineness): Taken => taken(taker, offer, modeRadius, fineness);
  const table = (m2: number, fineness: Fineness): RoundShares =>
    roundShares(
      {
        step: fineness.step,
        // a beam of this size fills the aperture; a larger M² widens its cone
        smallest: Math.log(Math.min(modeRadius, 2 / vNumber)) - tail,
        largest: Math.log(Math.max(1, modeRadius) * Math.sqrt(m2)) + tail,
      },
      (size) =>
        take(
          {
            beam: roundBeam(size, m2),
            pupil: null,
            wavelength: unitWavelength,
            coreRadius: 1,
            numericalAperture: (vNumber * unitWavelength) / (2 * Math.PI),
          },
          fineness,
        ),
    );
  return {
    taker,
    fundamentalTaker: fundamentalTaker(taker, modeRadius),
    round: tablesByQuality((m2) => table(m2, fine)),
    roughly: tablesByQuality((m2) => table(m2, rough)),
    other: ({ wavelength, coreRadius, numericalAperture }, beam) =>
      take({ beam, pupil: null, wavelength, coreRadius, numericalAperture }, single),
  };
}

function tablesByQuality(make: (m2: number) => RoundShares): (m2: number) => RoundShares {
  const tables = new Map<number, RoundShares>();
  return (m2) => {
    let table = tables.get(m2);
    if (table === undefined) {
      table = make(m2);
      tables.set(m2, table);
    }
    return table;
  };
}

function taken(taker: Taker, offer: Offer, modeRadius: number, { tolerance, rays }: Fineness): Taken {
  if (taker.set !== null) return takenByModes(taker.set, offer, tolerance);
  const { guided } = takenBySampledRays(taker.profile, offer, rays);
  const mode = roundBeam(modeRadius * offer.coreRadius, 1);
  return { guided, fundamental: gaussianOverlap(offer.wavelength, offer.beam, mode), powers: null };
}

/**
 * Radius of the Gaussian that stands for LP01 of a highly multimode fibre, in core radii: Marcuse's fit carried beyond
 * its range, where 0.65 is right to a hundredth for J₀(2.405 r), or the parabola's exact mode.
 */
function modeRadiusOfMany(profile: 'step' | 'graded', vNumber: number): number {
  return profile === 'step' ? 0.65 + 1.619 / vNumber ** 1.5 : Math.sqrt(2 / vNumber);
}

function fundamentalTaker(taker: Taker, modeRadius: number): Taker {
  const alone = {
    ...taker,
    suits: 'fundamental',
    set: taker.fundamentalSet,
    bestRadius: modeRadius,
  } as const;
  if (taker.set === null) return { ...alone, bestShare: 1 };
  // the whole set is asked: its tables are made already
  const matched = roundBeam(modeRadius, 1);
  const { fundamental } = overlapOf(taker.set, 1, unitWavelength, matched, null, { tolerance: 1e-4 });
  return { ...alone, bestShare: fundamental };
}
