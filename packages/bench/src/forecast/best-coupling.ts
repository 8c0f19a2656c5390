import { brentMinimum, type FacetBeam, nelderMead } from '@coreward/optics';
import { type Aimed, beamAt, type Meeting, perArrivedShare } from './meeting.ts';
import type { StatedBench } from './stated-bench.ts';

/** The best that misalignment and defocus can be turned into, and the beam that does it. */
export interface BestCoupling {
  readonly share: number;
  readonly beam: FacetBeam;
}

export type Wanted = 'guided' | 'fundamental';

/**
 * The optimum over offset, tilt and defocus. The fundamental is best hit squarely; all guided light together need not
 * be: a spot smaller than the mode may find more modes beside the axis. So a few places beside it are tried, and the
 * downhill simplex finishes from the best one.
 */
export function bestCoupling(bench: StatedBench, wanted: Wanted): BestCoupling | null {
  const { meeting, budget } = bench;
  const share = (beam: FacetBeam, tolerance: number) => shareOf(bench, beam, wanted, tolerance);
  const squarely = (distance: number) => beamAt(meeting, distance, null);
  if (share(squarely(budget.bestDistance), 1e-4) === null) return null;
  const distance = bestDistanceFor(meeting, budget.bestDistance, (z) => share(squarely(z), 1e-7) ?? 0);
  const centred: BestCoupling = { beam: squarely(distance), share: share(squarely(distance), 1e-9) ?? 0 };
  if (wanted === 'fundamental' || bench.method === 'rays' || meeting.vNumber > 30) return centred;

  const { coreRadius, numericalAperture } = meeting;
  const aimOf = ([x, y, tx, ty]: readonly number[]): Aimed => ({
    offsetX: x! * coreRadius,
    offsetY: y! * coreRadius,
    tiltX: tx! * numericalAperture,
    tiltY: ty! * numericalAperture,
  });
  const rough = share(centred.beam, 1e-4) ?? 0;
  const places = [
    [0.3, 0, 0, 0],
    [0.6, 0, 0, 0],
    [0, 0.6, 0, 0],
    [0, 0, 0.3, 0],
    [0, 0, 0.6, 0],
    [0, 0, 0, 0.6],
  ];
  const tried = places.map((place) => ({
    place,
    share: share(beamAt(meeting, distance, aimOf(place)), 1e-4) ?? 0,
  }));
  const best = tried.reduce((a, b) => (b.share > a.share ? b : a));
  if (best.share < rough + 2e-4) return centred;
  // defocus in units of what matters to the core
  const depth = coreRadius / numericalAperture;
  const found = nelderMead(
    ([z, ...aim]) => -(share(beamAt(meeting, distance + z! * depth, aimOf(aim)), 1e-4) ?? 0),
    [0, ...best.place],
    [0.2, 0.1, 0.1, 0.1, 0.1],
    { pointTolerance: 1e-3, valueTolerance: 1e-7, evaluations: 300 },
  );
  const [z, ...aim] = found.point;
  const beam = beamAt(meeting, distance + z! * depth, aimOf(aim));
  const reached = share(beam, 1e-9) ?? 0;
  return reached > centred.share ? { beam, share: reached } : centred;
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

function bestDistanceFor(meeting: Meeting, near: number, share: (distance: number) => number): number {
  const { waistZX, waistZY } = meeting.beam;
  const stigmatic = waistZX === waistZY;
  const aberrated = meeting.pupil !== null && meeting.pupil.sphericalAberration !== 0;
  if (stigmatic && !aberrated) return waistZX;
  const reach = Math.abs(waistZX - waistZY) + Math.abs(near - (waistZX + waistZY) / 2) + 1e-9;
  return brentMinimum((distance) => -share(distance), near - reach, near + reach).x;
}
