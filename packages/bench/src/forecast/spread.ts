import {
  type FacetBeam,
  type ModeSet,
  type Pupil,
  seededUniform,
  sobolDimensions,
  sobolPoints,
} from '@coreward/optics';
import type { Launch } from '../launch/launch.ts';
import type { Entry } from '../quantity/quantity.ts';
import { arrivalHalfAngle, stopTransmission } from './at-the-stop.ts';
import { type Budget, budgetOf } from './budget.ts';
import { asStated, chanceNames, type Draw, drawing } from './draw.ts';
import { drawnFocus } from './drawn-focus.ts';
import {
  fewModedBelow,
  leastV,
  modesTaker,
  type Offer,
  raysTaker,
  scaled,
  spreadRays,
  type Taker,
  takenByModes,
  takenBySampledRays,
  unlessTheSame,
} from './fibre-taker.ts';
import { type Meeting, meetingOf } from './meeting.ts';
import type { Asking, SetRight } from './overlap-causes.ts';
import { setRight } from './set-right.ts';
import type { StatedBench } from './stated-bench.ts';

/** The forecast's draws and what came of each. */
export interface Spread {
  readonly entries: readonly Entry[];
  readonly draws: readonly SpreadDraw[];
}

/** One bench drawn from the doubts, and what it lets through. */
export interface SpreadDraw {
  readonly draw: Draw;
  readonly vNumber: number;
  readonly power: number;
  readonly budget: Budget;
}

/** How many benches are drawn, and by which chance. */
export interface SpreadOptions {
  /** A power of two. */
  readonly draws: number;
  readonly seed: number;
}

/** Draws of a forecast: enough for the 5 % and 95 % points to stand within a few per cent of the interval's width. */
export const usualDraws: SpreadOptions = { draws: 256, seed: 20 };

/** Sets of modes made for one forecast: V is cut into so many equally likely slices. */
const vSlices = 12;
const spreadRungs = 24;

/** Power error in a draw that no interval shows. */
const drawTolerance = 1e-3;

/**
 * The spread of a launch over its doubts.
 *
 * @param stated the same launch as it is stated
 */
export function spreadOf(
  launch: Launch,
  entries: readonly Entry[],
  stated: Pick<StatedBench, 'meeting' | 'budget' | 'focus'>,
  { draws, seed }: SpreadOptions = usualDraws,
): Spread {
  const dimensions = chanceNames.length + entries.length;
  const points = evenPoints(draws, dimensions, seed);
  const drawAt = drawing(entries);
  const drawn = Array.from({ length: draws }, (_, i) => {
    const draw = drawAt(points.subarray(i * dimensions, (i + 1) * dimensions));
    return { draw, meeting: meetingOf(launch, draw) };
  });
  const takers = takersFor(launch, drawn);
  const right = settings(launch, stated);
  return {
    entries,
    draws: drawn.map(({ draw, meeting }, i) => {
      const taker = takers[i]!;
      const best = drawnFocus(meeting, taker, stated.focus);
      return {
        draw,
        vNumber: meeting.vNumber,
        power: Math.max(0, draw.at(launch.laser.power)),
        budget: budgetOf(launch, draw, meeting, taker, best, asking(meeting, taker, right(taker))),
      };
    }),
  };
}

/** Even points of the unit cube; coordinates beyond what the sequence has are drawn at random. */
function evenPoints(count: number, dimensions: number, seed: number): Float64Array {
  if (dimensions <= sobolDimensions) return sobolPoints(count, dimensions, seed);
  const even = sobolPoints(count, sobolDimensions, seed);
  const uniform = seededUniform(seed);
  const points = new Float64Array(count * dimensions);
  for (let i = 0; i < count; i += 1) {
    for (let j = 0; j < dimensions; j += 1) {
      points[i * dimensions + j] = j < sobolDimensions ? even[i * sobolDimensions + j]! : uniform();
    }
  }
  return points;
}

/** What sets draws right that ask a taker like this: once for modes, and once for rays. */
function settings(
  launch: Launch,
  { meeting, budget, focus }: Pick<StatedBench, 'meeting' | 'budget' | 'focus'>,
): (taker: Taker) => SetRight {
  const known = new Map<boolean, SetRight>();
  return ({ set }) => {
    const byModes = set !== null;
    const before = known.get(byModes);
    if (before !== undefined) return before;
    const taker = drawnTaker(launch.fibre.profile, meeting.vNumber, byModes);
    const best = drawnFocus(meeting, taker, focus);
    const right = setRight(
      budget,
      budgetOf(launch, asStated, meeting, taker, best, asking(meeting, taker, null)),
    );
    known.set(byModes, right);
    return right;
  };
}

const drawnTaker = (profile: Taker['profile'], vNumber: number, byModes: boolean): Taker =>
  byModes ? modesTaker(profile, vNumber, spreadRungs) : raysTaker(profile, vNumber);

function asking(meeting: Meeting, taker: Taker, right: SetRight | null): Asking {
  const { wavelength, coreRadius, numericalAperture } = meeting;
  const offerOf = (beam: FacetBeam, pupil: Pupil | null): Offer => ({
    beam,
    pupil,
    wavelength,
    coreRadius,
    numericalAperture,
  });
  const { set } = taker;
  if (set === null) {
    const plainly = unlessTheSame((beam) =>
      takenBySampledRays(taker.profile, offerOf(beam, null), spreadRays()),
    );
    return {
      // rays know no stop: what it takes it takes from guided and lost light alike
      taken: (beam, pupil) => scaled(plainly(beam), stopTransmission(beam, pupil, wavelength)),
      whole: null,
      setRight: right,
    };
  }
  const plainly = unlessTheSame((beam) => takenByModes(set, offerOf(beam, null), drawTolerance));
  let kept: number | null = null;
  const taken: Asking['taken'] = (beam, pupil) => {
    const plain = plainly(beam);
    if (pupil === null || !aberrationShows(beam, pupil, wavelength)) {
      return pupil === null ? plain : scaled(plain, stopTransmission(beam, pupil, wavelength));
    }
    kept ??= shareThroughPupil(
      set,
      (tried, by) => takenByModes(set, offerOf(tried, by), drawTolerance).guided,
      beam,
      pupil,
    );
    return scaled(plain, kept);
  };
  return { taken, whole: null, setRight: right };
}

/** Whether stop or aberration does more to the light than to cut it: a fiftieth of a wave at the beam's edge, or 1 % cut. */
function aberrationShows(beam: FacetBeam, pupil: Pupil, wavelength: number): boolean {
  const edge = arrivalHalfAngle(beam, wavelength);
  const waves = Math.abs(pupil.sphericalAberration) * (edge / pupil.aberrationAt) ** 4;
  return waves > 0.02 || stopTransmission(beam, pupil, wavelength) < 0.99;
}

/**
 * What the lens's stop and aberration leave of the coupling, taken once a draw for a coherent beam of the same cone and
 * used for every cause: the pupil integral is a hundred times slower than the rest of a draw.
 */
function shareThroughPupil(
  set: ModeSet,
  guided: (beam: FacetBeam, pupil: Pupil | null) => number,
  beam: FacetBeam,
  pupil: Pupil,
): number {
  const coherent: FacetBeam = {
    ...beam,
    waistRadiusX: beam.waistRadiusX / beam.m2X,
    waistRadiusY: beam.waistRadiusY / beam.m2Y,
    m2X: 1,
    m2Y: 1,
    offsetX: 0,
    offsetY: 0,
    tiltX: 0,
    tiltY: 0,
  };
  const without = guided(coherent, null);
  return set.modes.length === 0 || without === 0 ? 1 : guided(coherent, pupil) / without;
}

/** A taker for every draw; draws of nearly the same V share one. */
function takersFor(
  launch: Launch,
  drawn: readonly { readonly draw: Draw; readonly meeting: Meeting }[],
): readonly Taker[] {
  const { profile } = launch.fibre;
  const order = drawn.map((_, i) => i).sort((a, b) => drawn[a]!.meeting.vNumber - drawn[b]!.meeting.vNumber);
  const takers = new Array<Taker>(drawn.length);
  const slices = drawn[order[0]!]!.meeting.vNumber === drawn[order.at(-1)!]!.meeting.vNumber ? 1 : vSlices;
  for (let slice = 0; slice < slices; slice += 1) {
    const from = Math.floor((slice * drawn.length) / slices);
    const to = Math.floor(((slice + 1) * drawn.length) / slices);
    const middle = Math.max(leastV, drawn[order[(from + to) >> 1]!]!.meeting.vNumber);
    const taker = drawnTaker(profile, middle, middle < fewModedBelow);
    for (let i = from; i < to; i += 1) takers[order[i]!] = taker;
  }
  return takers;
}

/** Values in rising order, for `quantileAmong`. */
export const inOrder = (values: readonly number[]): Float64Array => Float64Array.from(values).sort();

/** The value that a share `p` of the draws stays below; draws of equal weight, in rising order. */
export function quantileAmong(sorted: Float64Array, p: number): number {
  const place = p * sorted.length - 0.5;
  const below = Math.max(0, Math.min(sorted.length - 1, Math.floor(place)));
  const above = Math.min(sorted.length - 1, below + 1);
  const share = Math.max(0, Math.min(1, place - below));
  // so written, two equal values give that value to the last digit
  return sorted[below]! + share * (sorted[above]! - sorted[below]!);
}
