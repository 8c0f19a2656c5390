import { Refusal } from '../refusal.ts';
import type { WalkMirror } from '../walk/step.ts';

/** Which mirror brings the spots together on which card, turned one after the other. */
export interface Serving {
  /** The mirror for the card nearer to the lens; the other one is for the other card. */
  readonly nearCard: WalkMirror;
  readonly farCard: WalkMirror;
  /** What is left of the error after both were turned once: below 1. Served the other way round it grows by 1 over this. */
  readonly errorRatio: number;
}

/**
 * Which mirror serves which card when the eye brings the spots together in turn. Each turn of a mirror leaves the
 * beams crossing at that card; what the second undoes of the first depends on the places alone.
 *
 * @param mirrors and cards by their distance upstream of the focal plane, m
 * @throws {Refusal} if both cards stand at one place, or the order of the mirrors makes no difference
 * @source geometry, derived here: the offset at z, X − θz, pivots about the mirror that is turned
 */
export function servingMirror(
  mirrors: { readonly near: number; readonly far: number },
  cards: { readonly near: number; readonly far: number },
): Serving {
  // M1 nulls the near card, then M2 the far one
  const ratio =
    ((mirrors.far - cards.far) * (mirrors.near - cards.near)) /
    ((mirrors.far - cards.near) * (mirrors.near - cards.far));
  const size = Math.abs(ratio);
  if (cards.near === cards.far || Number.isNaN(size) || size === 1) {
    throw new Refusal({
      where: 'steer: the two cards',
      what: 'from where they stand, angle and offset cannot be told apart',
      mend: 'Put one card close before the lens and the other behind M1, near the laser.',
    });
  }
  return size < 1
    ? { nearCard: 'M1', farCard: 'M2', errorRatio: size }
    : { nearCard: 'M2', farCard: 'M1', errorRatio: 1 / size };
}

/**
 * Whether what was read in turn grew twice running, each time by more than its doubt: then a mirror serves the wrong
 * card, or a sense was learned the wrong way.
 *
 * @param sizes offsets on one card in the order in which they were read, m
 */
export function growsTwice(sizes: readonly number[], readingError: number): boolean {
  const [first, second, third] = sizes.slice(-3).map(Math.abs);
  if (first === undefined || second === undefined || third === undefined) return false;
  return second > first + readingError && third > second + readingError;
}
