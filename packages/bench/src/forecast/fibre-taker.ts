import {
  bestGaussian,
  decays,
  type FacetBeam,
  guidedRays,
  type ModeSet,
  modeSet,
  momentsOf,
  onlyFundamental,
  overlapOf,
  type Pupil,
  phaseSpaceFraction,
  type RaySample,
  raySample,
} from '@coreward/optics';

/** V below which a fibre is called few-moded: there the focus is set for LP01, above for all guided light. */
export const fewModedBelow = 15;

/** V above which modes are not solved any more and rays answer. */
export const modesUpTo = 150;

/** V below which no mode is solved: LP01 would reach over a thousand core radii. */
export const leastV = 0.3;

/** What a fibre takes: fractions of the light that arrives at the lens's stop (or, without one, at the facet). */
export interface Taken {
  readonly guided: number;
  /** Null where only rays were counted. */
  readonly fundamental: number | null;
  /** Power in each mode of the set; null where only rays were counted. */
  readonly powers: Float64Array | null;
}

/** A fibre at one V, ready to be offered beams. */
export interface Taker {
  readonly vNumber: number;
  readonly profile: 'step' | 'graded';
  /** What its focus is set for, and which spot suits it: LP01's where it is few-moded, else that of all modes. */
  readonly suits: 'fundamental' | 'all modes';
  /** Null above {@link modesUpTo}, and where only rays are wanted. */
  readonly set: ModeSet | null;
  /** LP01 alone: what it takes does not depend on the others. */
  readonly fundamentalSet: ModeSet | null;
  /** Radius of the Gaussian that fits LP01 best, in core radii. */
  readonly bestRadius: number | null;
  /** What even that Gaussian leaves out, of all guided modes: 1 where rays are counted. */
  readonly bestShare: number;
}

/** In the many sets of an uncertain V, modes that decay more slowly than this (w) are not followed: no fibre on a bench keeps them. */
const looselyBound = 0.25;

/** Whether the sets of an uncertain V follow a mode. LP01 always. */
export const isFollowed = (mode: ModeSet['modes'][number]): boolean => decays(mode, looselyBound);

/** @param rungs see `modeSet`; fewer for the many sets of an uncertain V */
export function modesTaker(profile: 'step' | 'graded', vNumber: number, rungs?: number): Taker {
  const set =
    rungs === undefined ? modeSet(profile, vNumber) : modeSet(profile, vNumber, rungs, looselyBound);
  const fundamentalSet = onlyFundamental(set);
  const fewModed = vNumber < fewModedBelow;
  return {
    vNumber,
    profile,
    suits: fewModed ? 'fundamental' : 'all modes',
    set,
    fundamentalSet,
    ...bestSpotOf(set, fundamentalSet, fewModed),
  };
}

type BestSpot = { readonly bestRadius: number; readonly bestShare: number };

/** By the modes of a set, which a hand that turns a lens leaves as they are. */
const bestSpots = new WeakMap<ModeSet['modes'], BestSpot>();

function bestSpotOf(set: ModeSet, fundamentalSet: ModeSet, fewModed: boolean): BestSpot {
  const known = bestSpots.get(set.modes);
  if (known !== undefined) return known;
  const bestRadius = bestGaussian(fundamentalSet.modes[0]!).radius;
  const matched = roundBeam(bestRadius, 1);
  // only ratios of lengths matter: core radius 1, wavelength from V at a small numerical aperture
  const bestShare = fewModed ? overlapOf(set, 1, 0.01, matched, null, { tolerance: 1e-7 }).guided : 1;
  const found = { bestRadius, bestShare };
  bestSpots.set(set.modes, found);
  return found;
}

/** A fibre of which only the rays are asked. */
export const raysTaker = (profile: 'step' | 'graded', vNumber: number): Taker => ({
  vNumber,
  profile,
  suits: 'all modes',
  set: null,
  fundamentalSet: null,
  bestRadius: null,
  bestShare: 1,
});

/** What the beam meets besides the fibre's V. */
export interface Offer {
  readonly beam: FacetBeam;
  readonly pupil: Pupil | null;
  readonly wavelength: number;
  /** m. */
  readonly coreRadius: number;
  readonly numericalAperture: number;
}

/** Overlap with the modes. */
export function takenByModes(set: ModeSet, offer: Offer, tolerance: number): Taken {
  const { guided, fundamental, powers } = overlapOf(
    set,
    offer.coreRadius,
    offer.wavelength,
    offer.beam,
    offer.pupil,
    {
      tolerance,
    },
  );
  // a sum that is good to its tolerance may end a hair above all there is
  return { guided: Math.min(1, guided), fundamental: Math.min(1, fundamental), powers };
}

/** Share of rays, by quadrature, of the light that has passed the stop: rays know none. */
export function takenByRays(profile: 'step' | 'graded', offer: Offer): Taken {
  const moments = momentsOf(offer.beam, (2 * Math.PI) / offer.wavelength);
  const guided = phaseSpaceFraction(moments, offer.coreRadius, offer.numericalAperture, profile);
  return { guided, fundamental: null, powers: null };
}

/** Rays of the bench as stated, where an exact count takes long. */
export const manyRays = (): RaySample => raySample(16_384, 7);

/** The rays of a forecast's draws. */
export const spreadRays = (): RaySample => raySample(512, 7);

/** Fewer rays than this tell a share to no better than an eighth, and cannot follow what a doubt does to it. */
const fewRays = 64;

/**
 * Share of rays, by a fixed sample: fast enough for hundreds of draws. Where it finds few rays, as of a spot much larger than the
 * core, many are asked; and where those are few, too, the quadrature, which is quick there.
 */
export function takenBySampledRays(profile: 'step' | 'graded', offer: Offer, rays: RaySample): Taken {
  const moments = momentsOf(offer.beam, (2 * Math.PI) / offer.wavelength);
  const { coreRadius, numericalAperture } = offer;
  for (const sample of [() => rays, manyRays]) {
    const asked = sample();
    const { fraction } = guidedRays(moments, coreRadius, numericalAperture, profile, asked);
    if ((fraction * asked.length) / 4 >= fewRays)
      return { guided: fraction, fundamental: null, powers: null };
  }
  return takenByRays(profile, offer);
}

/**
 * Asks the fibre again only if the beam is another one than the last: one cause after the other is put onto a beam, and many
 * change nothing of it.
 */
export function unlessTheSame(take: (beam: FacetBeam) => Taken): (beam: FacetBeam) => Taken {
  let last: { readonly beam: FacetBeam; readonly taken: Taken } | null = null;
  return (beam) => {
    if (last === null || !isSame(last.beam, beam)) last = { beam, taken: take(beam) };
    return last.taken;
  };
}

const isSame = (one: FacetBeam, other: FacetBeam): boolean =>
  one.waistRadiusX === other.waistRadiusX &&
  one.waistRadiusY === other.waistRadiusY &&
  one.waistZX === other.waistZX &&
  one.waistZY === other.waistZY &&
  one.m2X === other.m2X &&
  one.m2Y === other.m2Y &&
  one.azimuth === other.azimuth &&
  one.offsetX === other.offsetX &&
  one.offsetY === other.offsetY &&
  one.tiltX === other.tiltX &&
  one.tiltY === other.tiltY;

/** A round, centred beam with its waist at the facet. */
export function roundBeam(waistRadius: number, m2: number): FacetBeam {
  return {
    waistRadiusX: waistRadius,
    waistRadiusY: waistRadius,
    waistZX: 0,
    waistZY: 0,
    m2X: m2,
    m2Y: m2,
    azimuth: 0,
    offsetX: 0,
    offsetY: 0,
    tiltX: 0,
    tiltY: 0,
  };
}

/** All shares times what passed something on the way. */
export function scaled(taken: Taken, passed: number): Taken {
  if (passed === 1) return taken;
  return {
    guided: taken.guided * passed,
    fundamental: taken.fundamental === null ? null : taken.fundamental * passed,
    powers: taken.powers?.map((power) => power * passed) ?? null,
  };
}
