import type { Budget } from '../forecast/budget.ts';
import type { Meeting } from '../forecast/meeting.ts';
import { overlapCauses } from '../forecast/overlap-causes.ts';
import type { Launch } from '../launch/launch.ts';
import type { FastFibre } from './fast-fibre.ts';
import { pupilSpread } from './lens-doubt.ts';
import { type LogSpread, noSpread, spreadOfRatios, together } from './log-spread.ts';
import type { MatchPurpose } from './matched.ts';
import type { Prepared } from './prepared.ts';

/**
 * What the doubts of spot, M², fibre and hand make of the overlap: each taken to both its ends alone, for a round beam of
 * the same size.
 */
export function overlapSpread(
  launch: Launch,
  meeting: Meeting,
  purpose: MatchPurpose,
  prepared: Prepared,
  { chain }: Budget,
): LogSpread {
  const { beam, coreRadius } = meeting;
  const { fibre, doubt, atEnds } = prepared.fibreOf(launch, meeting);
  const stated = Math.sqrt(beam.m2X * beam.m2Y);
  const logSize = Math.log(Math.sqrt(beam.waistRadiusX * beam.waistRadiusY) / coreRadius);
  const share = (of: FastFibre, m2: number, change: number): number => {
    const { guided, fundamental } = of.roughly(Math.max(1, m2))(logSize + change);
    return purpose === 'total' ? guided : (fundamental ?? 0);
  };
  const plain = share(fibre, stated, 0);
  const lens = prepared.lensOf(launch, meeting)?.focalLength ?? 0;
  const size = Math.hypot(prepared.light.size, doubt.coreApart, lens);
  const { down, up } = together([
    spreadOfRatios(share(fibre, stated, -size) / plain, share(fibre, stated, size) / plain),
    ...prepared.light.qualities.map((ends) =>
      spreadOfRatios(...ends.map((change) => share(fibre, stated * change.m2, change.size) / plain)),
    ),
    spreadOfRatios(
      share(atEnds[0], stated, doubt.coreAlong) / plain,
      share(atEnds[1], stated, -doubt.coreAlong) / plain,
    ),
    handSpread(chain.factors[aim] ?? 1),
  ]);
  // no fibre takes more than all
  const most = Math.max(0, -Math.log(Math.max(chain.guided, Number.MIN_VALUE)));
  return { down, up: Math.min(up, most) };
}

const aim = overlapCauses.findIndex(({ id }) => id === 'aim');

/** The loss that a hand leaves is that of two screws a chance away from their best: 3 times its mean at worst, hardly any at best. */
function handSpread(kept: number): LogSpread {
  const mean = Math.max(0, -Math.log(kept));
  // −ln 0.05 and −ln 0.95: a sum of two squares of normal chances falls off exponentially
  return { down: (-Math.log(0.05) - 1) * mean, up: (1 + Math.log(0.95)) * mean };
}

/** What the doubts of the lens's surfaces, stop and aberration make of the light. */
export function lensSpread(
  launch: Launch,
  meeting: Meeting,
  purpose: MatchPurpose,
  prepared: Prepared,
): LogSpread {
  const { collimator } = launch;
  const doubt = prepared.lensOf(launch, meeting);
  if (collimator === null || doubt === null) return noSpread;
  if (meeting.pupil === null) return doubt.surfaces;
  return together([
    doubt.surfaces,
    pupilSpread(collimator, meeting, meeting.pupil, prepared.fibreOf(launch, meeting).fibre, purpose),
  ]);
}
