import { brentMinimum, type FacetBeam, type Pupil } from '@coreward/optics';
import { fewModedBelow } from './fibre-taker.ts';
import { beamAt } from './meeting.ts';
import type { StatedBench } from './stated-bench.ts';

/** Error of a share that is compared with others. */
const comparing = 1e-4;

/** What another focal length would do. */
export interface BetterFocalLength {
  /** Over the one there is. */
  readonly ratio: number;
  /** Guided light over what the lens there is gets at its best focus, perfectly aimed. */
  readonly gain: number;
}

/**
 * The focal length that would suit this beam and fibre, and what it gains, computed with the beam as the lens clips it.
 * A lens of another focal length with the same opening makes the spot larger and the cone smaller by the same factor, and
 * clips as much.
 *
 * @param guess about where to look, over the focal length there is
 */
export function betterFocalLength(bench: StatedBench, guess: number): BetterFocalLength {
  const { meeting, taken, takenByFundamental, countedRays, budget } = bench;
  const few = meeting.vNumber < fewModedBelow;
  const guided = (ratio: number): number => {
    const [beam, pupil] = behindAnother(bench, ratio);
    return countedRays === null ? taken(beam, pupil, comparing).guided : countedRays(beam, pupil);
  };
  const wanted = (ratio: number): number => {
    const [beam, pupil] = behindAnother(bench, ratio);
    return few ? (takenByFundamental(beam, pupil, comparing) ?? 0) : guided(ratio);
  };
  const near = Math.log(guess);
  const { x } = brentMinimum((log) => -wanted(Math.exp(log)), near - 1.2, near + 1.2, 0.01);
  const ratio = Math.exp(x);
  const here = beamAt(meeting, budget.bestDistance, null);
  const now =
    countedRays === null ? taken(here, meeting.pupil, comparing).guided : countedRays(here, meeting.pupil);
  return { ratio, gain: now > 0 ? guided(ratio) / now : 1 };
}

/** Beam and stop as a lens of `ratio` times the focal length would make them, waists on the facet. */
function behindAnother({ meeting }: StatedBench, ratio: number): readonly [FacetBeam, Pupil | null] {
  const { beam, pupil } = meeting;
  const astigmatism = (beam.waistZX - beam.waistZY) * ratio ** 2;
  const other: FacetBeam = {
    ...beam,
    waistRadiusX: beam.waistRadiusX * ratio,
    waistRadiusY: beam.waistRadiusY * ratio,
    waistZX: astigmatism / 2,
    waistZY: -astigmatism / 2,
  };
  return [
    other,
    pupil === null ? null : { ...pupil, stop: pupil.stop / ratio, aberrationAt: pupil.aberrationAt / ratio },
  ];
}
