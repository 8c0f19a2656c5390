import { alwaysBelow, driftOf, type Repeats, scatterOf } from './failure-signs.ts';
import type { Screw, WalkAxis } from './step.ts';
import { type Asking, isSpent, notice, stand, sweep, type Trail } from './trail.ts';

export const near = (axis: WalkAxis): Screw => ({ mirror: 'M2', axis });
export const far = (axis: WalkAxis): Screw => ({ mirror: 'M1', axis });
export const axes = ['horizontal', 'vertical'] as const;

/** A sweep that gains less than this has nothing more to give (our own choice: a few times the scatter of a reading). */
const worthAnotherSweep = Math.log(1.1);
const sweepsBeyondTwo = 4;

/**
 * Peaks the near mirror: one screw after the other until a sweep gains nothing. ln of each highest reading, in order;
 * a sweep that told nothing is left out.
 */
export function* peakNearMirror(
  trail: Trail,
  why: 'climb' | 'after-focus' = 'climb',
): Asking<readonly number[]> {
  const highest: number[] = [];
  for (let i = 0; i < 2 + sweepsBeyondTwo && !isSpent(trail); i++) {
    const seen = yield* sweep(trail, near(axes[i % 2]!), why);
    const before = highest.at(-1);
    if (seen !== null) highest.push(seen);
    if (i >= 1 && (seen === null || before === undefined || seen - before < worthAnotherSweep)) {
      // the first two screws are other ones: only from the second sweep of a screw on is little gain an end
      if (i >= 2 || seen === null) break;
      if (before !== undefined && seen - before < worthAnotherSweep) break;
    }
  }
  return highest;
}

/** Standing light that is this far below the highest is taken for the peak (ln): a reading's own scatter explains it. */
const closeEnough = 0.026;
const triesOfOneScrew = 4;

/** What a polish brought. */
export interface Polished {
  /** ln of the highest light seen in each sweep. */
  readonly highest: readonly number[];
  /** ln highest minus ln standing at the end of each axis; null where nothing was told. */
  readonly below: readonly (number | null)[];
}

/** Sets both screws of the near mirror where the meter stands at what a sweep has shown. */
export function* polish(trail: Trail, tries = triesOfOneScrew): Asking<Polished> {
  const highest: number[] = [];
  const below: (number | null)[] = [];
  for (const axis of axes) {
    let missing: number | null = null;
    const repeats: { readonly highest: number[]; readonly standing: number[] } = {
      highest: [],
      standing: [],
    };
    for (let i = 0; i < tries && !isSpent(trail); i++) {
      const seen = yield* sweep(trail, near(axis), 'polish');
      if (seen === null) break;
      highest.push(seen);
      const standing = yield* stand(trail, 'compare');
      if (standing === null) break;
      repeats.highest.push(seen);
      repeats.standing.push(standing);
      missing = seen - standing;
      if (missing < closeEnough) break;
    }
    noticeRepeats(trail, repeats);
    below.push(missing);
  }
  return { highest, below };
}

/** Says what the repeats of one screw tell of source, hand and mount. */
export function noticeRepeats(trail: Trail, repeats: Repeats): void {
  const drift = driftOf(repeats.highest);
  if (drift !== null) notice(trail, { id: 'source-drifts', values: { change: Math.expm1(drift) } });
  const scatter = scatterOf(repeats);
  if (scatter !== null) notice(trail, { id: 'repeats-scatter', values: { scatter } });
  const below = alwaysBelow(repeats);
  if (below !== null) notice(trail, { id: 'stands-below-highest', values: { below: -Math.expm1(-below) } });
}
