import { type FacetBeam, overlapOf, raySample } from '@coreward/optics';
import { focusDepth } from '../forecast/best-focus.ts';
import { drawnBestDistance } from '../forecast/drawn-focus.ts';
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
import { fundamentalOfMany } from './fundamental-of-many.ts';
import { type RoundShares, roundShares } from './round-shares.ts';

/** A fibre at one V, ready to be asked about thousands of beams. */
export interface FastFibre {
  /** For all guided light, and for LP01 as if it were the only mode. */
  readonly taker: Taker;
  readonly fundamentalTaker: Taker;
  /**
   * Round beams of this M², centred, at their best focus: right to 0.005; where modes are too many, to 0.015; and to 0.02
   * where a spot is less than half as wide as the one that suits, for there a little focus moves much light between modes.
   */
  readonly round: (m2: number) => RoundShares;
  /** The same right to 0.03, for what a doubt may do. */
  readonly roughly: (m2: number) => RoundShares;
  /** Any other beam, as the fibre sees it, without stop or aberration. */
  readonly other: (meeting: Meeting, beam: FacetBeam) => Taken;
}

/** How fine a table of round beams is: step in ln(size), error of a power, rays where modes are too many. */
interface Fineness {
  readonly step: number;
  readonly tolerance: number;
  readonly rays: number;
}

const fine: Fineness = { step: 0.25, tolerance: 3e-4, rays: 4096 };
const rough: Fineness = { step: 0.5, tolerance: 1e-2, rays: 1024 };
const single: Fineness = { step: 0, tolerance: 1e-3, rays: 512 };

/** Rungs of the mode ladders: enough for that. */
const rungs = 32;

/** Of a round beam only ratios of lengths count: core radius 1, and V by way of the aperture. */
const unitWavelength = 0.01;

/** So far from the mode, in ln(size), a share is below a third. */
const far = 1.25;

/** A spot so much smaller than what core and aperture take, or larger, in ln: from there shares go as the square. */
const tail = 2.1;

/** A fibre of this V, made ready to be asked by many beams. */
export function fastFibre(profile: 'step' | 'graded', vNumber: number): FastFibre {
  const few = vNumber < fewModedBelow ? modesTaker(profile, vNumber, rungs) : null;
  const { taker, fundamentalTaker, take } =
    few === null ? manyModed(profile, vNumber) : fewModed(few, few.set!);
  const modeRadius = fundamentalTaker.bestRadius ?? 1;
  const places = new Map<number, number>();
  /** Where LP01 takes most of a coherent beam of this size, behind its waist, in depths. */
  const placeOf = (size: number): number => {
    const key = Math.round(Math.log(size) / placeStep);
    let place = places.get(key);
    if (place === undefined) {
      const meeting = { ...unitOffer(vNumber, Math.exp(key * placeStep), 1), widening: none };
      const depth = focusDepth(meeting, fundamentalTaker);
      const about = drawnBestDistance(meeting, fundamentalTaker, 0) / depth;
      // the second look stands about the place that the first has found
      place = about === 0 ? 0 : drawnBestDistance(meeting, fundamentalTaker, about, 1e-4) / depth;
      places.set(key, place);
    }
    return place;
  };
  // told in depths, the place hardly depends on M²
  const focused = (offer: Offer, size: number, m2: number): Offer => {
    if (few === null) return offer;
    const place = placeOf(size / Math.sqrt(m2));
    if (place === 0) return offer;
    const beside = place * focusDepth({ ...offer, widening: none }, fundamentalTaker);
    return { ...offer, beam: { ...offer.beam, waistZX: -beside, waistZY: -beside } };
  };
  const table = (m2: number, fineness: Fineness): RoundShares =>
    roundShares(
      {
        step: fineness.step,
        // a beam of this size fills the aperture; a larger M² widens its cone
        smallest: Math.log(Math.min(modeRadius, 2 / vNumber)) - tail,
        largest: Math.log(Math.max(1, modeRadius) * Math.sqrt(m2)) + tail,
      },
      (size) => {
        const offer = focused(unitOffer(vNumber, size, m2), size, m2);
        // what is small needs no more digits than this, and many more rungs to get them
        const small = Math.abs(Math.log(size / modeRadius)) > far;
        const tolerance = small ? Math.max(3e-3, fineness.tolerance) : fineness.tolerance;
        return { taken: take(offer, { ...fineness, tolerance }), besideWaist: offer.beam.waistZX !== 0 };
      },
    );
  return {
    taker,
    fundamentalTaker,
    round: tablesByQuality((m2) => table(m2, fine)),
    roughly: tablesByQuality((m2) => table(m2, rough)),
    other: ({ wavelength, coreRadius, numericalAperture }, beam) =>
      take({ beam, pupil: null, wavelength, coreRadius, numericalAperture }, single),
  };
}

/** A round, centred beam, its waist at a facet of core radius 1. */
const unitOffer = (vNumber: number, size: number, m2: number): Offer => ({
  beam: roundBeam(size, m2),
  pupil: null,
  wavelength: unitWavelength,
  coreRadius: 1,
  numericalAperture: (vNumber * unitWavelength) / (2 * Math.PI),
});

/** How close the sizes stand, in ln, for which a place of focus is looked for. */
const placeStep = 0.05;

/** A flat end widens nothing. */
const none = { along: { x: 1, y: 1 }, lab: 1 } as const;

interface Asked {
  readonly taker: Taker;
  readonly fundamentalTaker: Taker;
  readonly take: (offer: Offer, fineness: Fineness) => Taken;
}

function fewModed(taker: Taker, set: NonNullable<Taker['set']>): Asked {
  // the whole set is asked for LP01: its tables are made already
  const matched = roundBeam(taker.bestRadius ?? 1, 1);
  const { fundamental } = overlapOf(set, 1, unitWavelength, matched, null, { tolerance: 1e-4 });
  return {
    taker,
    fundamentalTaker: {
      ...taker,
      suits: 'fundamental',
      set: taker.fundamentalSet,
      bestShare: fundamental,
    },
    take: (offer, { tolerance }) => takenByModes(set, offer, tolerance),
  };
}

function manyModed(profile: 'step' | 'graded', vNumber: number): Asked {
  const taker = raysTaker(profile, vNumber);
  const { radius, bestShare, share } = fundamentalOfMany(profile, vNumber);
  return {
    taker,
    fundamentalTaker: { ...taker, suits: 'fundamental', bestRadius: radius, bestShare },
    take: (offer, { tolerance, rays }) => ({
      guided: takenBySampledRays(profile, offer, raySample(rays, 7)).guided,
      fundamental: share(offer.wavelength, offer.coreRadius, offer.beam, tolerance),
      powers: null,
    }),
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
