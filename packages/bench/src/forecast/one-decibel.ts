import { brentRoot, type FacetBeam } from '@coreward/optics';
import { type BestCoupling, shareOf, type Wanted } from './best-coupling.ts';
import { finestFingerMotion } from './draw.ts';
import type { ScrewTolerance, Tolerances } from './expected.ts';
import { leverAtFacet, nearScrews } from './near-screws.ts';
import type { StatedBench } from './stated-bench.ts';
import type { ScrewLever } from './way-to-the-facet.ts';

const oneDecibel = 10 ** -0.1;

/** Error of a share that no tolerance shows. */
const roughly = 1e-4;

/** A beam changed by an amount `t` of one kind of misalignment. */
type Change = (beam: FacetBeam, t: number) => FacetBeam;

/**
 * What costs 1 dB, each alone from the optimum of `wanted`; null where the method does not know `wanted`.
 *
 * @param best the optimum of `wanted`
 */
export function tolerancesFor(
  bench: StatedBench,
  best: BestCoupling | null,
  wanted: Wanted,
): Tolerances | null {
  if (best === null || !(best.share > 0)) return null;
  const { coreRadius, numericalAperture, wavelength, lens, arrival } = bench.meeting;
  const { waistRadiusX, waistRadiusY, m2X, m2Y } = best.beam;
  const spot = Math.max(waistRadiusX, waistRadiusY, coreRadius);
  const cone = Math.max(
    (m2X * wavelength) / (Math.PI * waistRadiusX),
    (m2Y * wavelength) / (Math.PI * waistRadiusY),
  );
  const far = { offset: 40 * spot, tilt: Math.min(1, 10 * Math.max(cone, numericalAperture)) };
  const { offsetX: x0, offsetY: y0, tiltX: tx0, tiltY: ty0 } = best.beam;
  // about a beam that comes straight in, left is as right; of a round one, x is as y; in focus, near is as far
  const straight = x0 === 0 && y0 === 0 && tx0 === 0 && ty0 === 0;
  const round = waistRadiusX === waistRadiusY && m2X === m2Y && best.beam.waistZX === best.beam.waistZY;
  const focused = round && best.beam.waistZX === 0 && bench.meeting.pupil === null;
  const least = (changes: readonly Change[], first: number, last: number, mirrored = straight) =>
    leastOf(
      changes.flatMap((change) => [
        crossing(bench, best, wanted, change, first, last),
        ...(mirrored ? [] : [crossing(bench, best, wanted, (beam, t) => change(beam, -t), first, last)]),
      ]),
    );
  const sideways = (alongX: Change, alongY: Change) => (straight && round ? [alongX] : [alongX, alongY]);

  const tiltOf = (lever: ScrewLever) => leverAtFacet(lever, lens, bench.budget.bestDistance);
  return {
    offsetFor1dB: least(sideways(offsetX, offsetY), spot / 50, far.offset),
    tiltFor1dB: least(sideways(tiltX, tiltY), Math.min(cone, numericalAperture) / 50, far.tilt),
    defocusFor1dB: least([defocus], spot / cone / 50, (400 * spot) / cone, focused),
    screws: arrival.levers.map((lever): ScrewTolerance => {
      const { offset, tilt } = tiltOf(lever);
      const x = lever.axis === 'horizontal';
      const turned: Change = (beam, turns) => {
        const by = turns * lever.tiltPerTurn;
        return x
          ? { ...beam, offsetX: beam.offsetX + offset * by, tiltX: beam.tiltX + tilt * by }
          : { ...beam, offsetY: beam.offsetY + offset * by, tiltY: beam.tiltY + tilt * by };
      };
      return { mirror: lever.mirror, axis: lever.axis, turnsFor1dB: least([turned], 1e-5, 4) };
    }),
  };
}

const offsetX: Change = (beam, t) => ({ ...beam, offsetX: beam.offsetX + t });
const offsetY: Change = (beam, t) => ({ ...beam, offsetY: beam.offsetY + t });
const tiltX: Change = (beam, t) => ({ ...beam, tiltX: beam.tiltX + t });
const tiltY: Change = (beam, t) => ({ ...beam, tiltY: beam.tiltY + t });
const defocus: Change = (beam, t) => ({ ...beam, waistZX: beam.waistZX - t, waistZY: beam.waistZY - t });

const leastOf = (found: readonly (number | null)[]): number | null =>
  found.reduce((least, t) => (t === null ? least : least === null ? t : Math.min(least, t)), null);

/** The first `t` at which the share has fallen by 1 dB, or null if it has not by `last`. */
function crossing(
  bench: StatedBench,
  best: BestCoupling,
  wanted: Wanted,
  change: Change,
  first: number,
  last: number,
): number | null {
  // of very many modes rays are counted, on both sides of the comparison
  const { countedRays, meeting } = bench;
  const counted = wanted === 'guided' ? countedRays : null;
  const share = (beam: FacetBeam) =>
    counted === null ? (shareOf(bench, beam, wanted, roughly) ?? 0) : counted(beam, meeting.pupil);
  const top = counted === null ? best.share : counted(best.beam, meeting.pupil);
  // the root is looked for between two places that the way there has asked already
  const asked = new Map<number, number>();
  const above = (t: number): number => {
    const known = asked.get(t) ?? share(change(best.beam, t)) - top * oneDecibel;
    asked.set(t, known);
    return known;
  };
  let from = 0;
  for (let to = first; ; to *= 1.6) {
    const here = Math.min(to, last);
    if (above(here) < 0) {
      // of next to no light the error of a share is more than a decibel
      return from === 0 && above(0) <= 0 ? null : brentRoot(above, from, here, 1e-4 * here);
    }
    if (here === last) return null;
    from = here;
  }
}

/**
 * Share of `wanted` that is lost when both screws of the near mirror are off by the least steady hand's motion, from the
 * optimum of `wanted`; null where no mount is given.
 */
export function handLimitOf(bench: StatedBench, best: BestCoupling | null, wanted: Wanted): number | null {
  const { meeting, budget, countedRays } = bench;
  const { horizontal, vertical, assumed } = nearScrews(meeting.arrival);
  if (assumed) return null;
  if (best === null || !(best.share > 0)) return null;
  const x = leverAtFacet(horizontal, meeting.lens, budget.bestDistance);
  const y = leverAtFacet(vertical, meeting.lens, budget.bestDistance);
  const byX = horizontal.tiltPerTurn * finestFingerMotion.leastSteady;
  const byY = vertical.tiltPerTurn * finestFingerMotion.leastSteady;
  const { beam } = best;
  const off = (sign: 1 | -1): FacetBeam => ({
    ...beam,
    offsetX: beam.offsetX + sign * x.offset * byX,
    tiltX: beam.tiltX + sign * x.tilt * byX,
    offsetY: beam.offsetY + sign * y.offset * byY,
    tiltY: beam.tiltY + sign * y.tilt * byY,
  });
  const counted = wanted === 'guided' ? countedRays : null;
  const share = (at: FacetBeam): number =>
    counted === null ? (shareOf(bench, at, wanted, 1e-7) ?? 0) : counted(at, meeting.pupil);
  // about a beam that comes straight in, left is as right
  const straight = beam.offsetX === 0 && beam.offsetY === 0 && beam.tiltX === 0 && beam.tiltY === 0;
  const left = straight ? share(off(1)) : Math.min(share(off(1)), share(off(-1)));
  const top = counted === null ? best.share : share(beam);
  return top > 0 ? Math.max(0, 1 - left / top) : null;
}
