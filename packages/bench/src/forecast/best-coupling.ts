import { type FacetBeam, nelderMead } from '@coreward/optics';
import { perArrivedShare } from './at-the-stop.ts';
import { fundamentalDepth, guidedDepth, isRound } from './best-focus.ts';
import { fewModedBelow } from './fibre-taker.ts';
import { beamAt, type Meeting } from './meeting.ts';
import { mostLightAt } from './most-light.ts';
import type { Aimed } from './near-screws.ts';
import type { StatedBench } from './stated-bench.ts';

/** The best that misalignment and defocus can be turned into, and the beam that does it. */
export interface BestCoupling {
  readonly share: number;
  readonly beam: FacetBeam;
}

/** What the most is wanted of: all guided modes together, or LP01 alone. */
export type Wanted = 'guided' | 'fundamental';

/** For all guided light and for LP01; null where the method does not know LP01. */
export interface BestCouplings {
  readonly guided: BestCoupling;
  readonly fundamental: BestCoupling | null;
}

/** Error of a share that is told. */
const telling = 1e-7;

/**
 * The optima over offset, tilt and defocus, found to about 1e-3. The fundamental is best hit squarely. All guided light
 * together need not be: a spot smaller than the mode may find more modes beside the axis. So places beside it, and tilts,
 * are tried along both axes of the beam, and the downhill simplex finishes from the best of them. No optimum is less than
 * what the bench as stated has, and of all guided light no less than where LP01 is at its best.
 */
export function bestCouplings(bench: StatedBench): BestCouplings {
  const { meeting, budget } = bench;
  const stated = beamAt(meeting, budget.distance, meeting.aim);
  const { fundamental: statedFundamental, guided: statedGuided } = budget.chain;
  const fundamental =
    statedFundamental === null
      ? null
      : better(squarely(bench, 'fundamental'), { beam: stated, share: statedFundamental });
  let guided = squarely(bench, 'guided');
  if (fundamental !== null) guided = better(guided, told(bench, fundamental.beam, 'guided'));
  // of many modes a core takes light from beside the axis no better than from on it, and they take long to sum
  if (bench.method === 'modes' && bench.countedRays === null) guided = besideTheAxis(bench, guided);
  return { fundamental, guided: better(guided, { beam: stated, share: statedGuided }) };
}

const better = (one: BestCoupling, other: BestCoupling): BestCoupling =>
  other.share > one.share ? other : one;

const told = (bench: StatedBench, beam: FacetBeam, wanted: Wanted): BestCoupling => ({
  beam,
  share: shareOf(bench, beam, wanted, telling) ?? 0,
});

/** With a perfect aim and the focus at its best. */
function squarely(bench: StatedBench, wanted: Wanted): BestCoupling {
  const { meeting, taker, focus, countedRays } = bench;
  const asSet = (wanted === 'fundamental') === (taker.suits === 'fundamental');
  // many modes: the focus is flat, and was found by rays
  const distance =
    asSet || (wanted === 'guided' && countedRays !== null)
      ? focus.distance
      : mostLightAt(
          meeting,
          wanted === 'fundamental' ? fundamentalDepth(meeting, taker) : guidedDepth(meeting, taker),
          (beam, tolerance) => shareOf(bench, beam, wanted, tolerance) ?? 0,
        );
  return told(bench, beamAt(meeting, distance, null), wanted);
}

/** Beside the axis, along one axis of the beam: offset, tilt, and tilt across it; in core radii and numerical apertures. */
const places = {
  near: [
    [0.25, 0, 0],
    [0.5, 0, 0],
  ],
  far: [
    [0.7, 0, 0],
    [0.9, 0, 0],
  ],
  tilt: [
    [0, 0.3, 0],
    [0, 0.6, 0],
  ],
  both: [
    [0.4, 0.3, 0],
    [0.4, -0.3, 0],
    [0.4, 0, 0.3],
  ],
} as const;

/** By kind, as offsets x and y and tilts x and y; no mirror image is missing when both axes are asked. */
const kindsAlong = (axis: 'x' | 'y'): readonly (readonly number[])[][] =>
  Object.values(places).map((kind) =>
    kind.map(([offset, tilt, across]) =>
      axis === 'x' ? [offset, 0, tilt, across] : [0, offset, across, tilt],
    ),
  );

/** A place beside the axis that takes so much less than the axis is no way to more. */
const hopeless = 0.03;

/** How long a search may take: starts of the simplex, shares it asks for from each, and the error of these. */
interface Effort {
  readonly starts: number;
  readonly evaluations: number;
  readonly error: number;
}

/** Product of both M² beyond which the search for more light beside the axis is kept short. */
const veryIncoherent = 36;

/** A share takes microseconds for a coherent beam, ten times as long for another, and milliseconds through a lens's pupil. */
function effortFor({ pupil, beam, vNumber }: Meeting): Effort {
  if (pupil !== null) return { starts: 1, evaluations: 40, error: 1e-3 };
  const coherent = beam.m2X === 1 && beam.m2Y === 1;
  // of so incoherent a beam a share takes milliseconds, and beside the axis there is next to nothing to be had
  if (beam.m2X * beam.m2Y > veryIncoherent) return { starts: 1, evaluations: 60, error: 1e-3 };
  if (!coherent) return { starts: vNumber < fewModedBelow ? 2 : 1, evaluations: 120, error: 1e-3 };
  return { starts: vNumber < fewModedBelow ? 3 : 2, evaluations: 250, error: 1e-4 };
}

function besideTheAxis(bench: StatedBench, centred: BestCoupling): BestCoupling {
  const { meeting, taker } = bench;
  const { beam, coreRadius, numericalAperture } = meeting;
  const { starts, evaluations, error } = effortFor(meeting);
  if (1 - centred.share < error) return centred;
  const c = Math.cos(beam.azimuth);
  const s = Math.sin(beam.azimuth);
  // along the beam's own axes, for there its mirrors stand
  const aimOf = ([x, y, tx, ty]: readonly number[]): Aimed => ({
    offsetX: (c * x! - s * y!) * coreRadius,
    offsetY: (s * x! + c * y!) * coreRadius,
    tiltX: (c * tx! - s * ty!) * numericalAperture,
    tiltY: (s * tx! + c * ty!) * numericalAperture,
  });
  const { distances, depth } = distancesToTry(meeting, taker, centred);
  const at = ([distance, ...aim]: readonly number[]) => beamAt(meeting, distance! * depth, aimOf(aim));
  const share = (point: readonly number[]) => shareOf(bench, at(point), 'guided', error) ?? 0;
  const kinds = isRound(beam) ? kindsAlong('x') : [...kindsAlong('x'), ...kindsAlong('y')];
  // the best of every kind, for two of a kind mostly end at the same place
  const tried = kinds
    .map((aims) =>
      aims
        .flatMap((aim) => distances.map((distance) => [distance, ...aim]))
        .map((point) => ({ point, share: share(point) }))
        .reduce((one, other) => (other.share > one.share ? other : one)),
    )
    .filter((one) => one.share > centred.share - hopeless)
    .sort((one, other) => other.share - one.share);
  return tried.slice(0, starts).reduce((best, { point }) => {
    const found = nelderMead((tested) => -share(tested), point, [0.2, 0.1, 0.1, 0.1, 0.1], {
      pointTolerance: 3e-3,
      valueTolerance: 1e-6,
      evaluations,
    });
    return better(best, told(bench, at(found.point), 'guided'));
  }, centred);
}

/** The best focus on the axis and both waists, in units of what matters to the core. */
function distancesToTry(meeting: Meeting, taker: StatedBench['taker'], centred: BestCoupling) {
  const { waistZX, waistZY, waistRadiusX, waistRadiusY, m2X, m2Y } = meeting.beam;
  const depth = meeting.coreRadius / meeting.numericalAperture;
  const spread = guidedDepth(meeting, taker);
  const apart = 0.1 * Math.min(spread(waistRadiusX, m2X), spread(waistRadiusY, m2Y));
  const focus = waistZX - centred.beam.waistZX / meeting.widening.along.x ** 2;
  const all = [focus, waistZX, waistZY];
  const distances = all.filter((z, i) => all.slice(0, i).every((other) => Math.abs(z - other) > apart));
  return { distances: distances.map((z) => z / depth), depth };
}

/** Share of the light that arrives at the facet plane; null where the method does not know it. */
export function shareOf(
  bench: StatedBench,
  beam: FacetBeam,
  wanted: Wanted,
  tolerance: number,
): number | null {
  const { pupil } = bench.meeting;
  const taken =
    wanted === 'fundamental'
      ? bench.takenByFundamental(beam, pupil, tolerance)
      : bench.taken(beam, pupil, tolerance).guided;
  return taken === null ? null : perArrivedShare(taken, beam, bench.meeting);
}
