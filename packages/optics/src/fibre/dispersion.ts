import { brentRoot } from '../numerics/brent.ts';

/** The two transverse parameters of a mode, u² + w² = V². */
export interface Transverse {
  readonly u: number;
  readonly w: number;
}

/** One equation between u and w with exactly one root between two bounds of u; u² + w² = V². */
export interface DispersionProblem {
  readonly vNumber: number;
  /** Changes sign at the mode, and nowhere else between the bounds. Must stand w down to 1e−30. */
  readonly mismatch: (u: number, w: number) => number;
  /** Bounds of u; `uHigh` = V asks for everything up to cut-off. */
  readonly uLow: number;
  readonly uHigh: number;
}

/** Below this w a mode of l = 0 is 1e30 core radii wide, and counts as not guided. */
const leastW = 1e-30;

/**
 * The one mode between the bounds, or `null` if it lies nearer to cut-off than doubles can tell.
 *
 * Solved for whichever of u and w is the smaller, so that both come out with full relative accuracy: near cut-off the
 * w of l = 0 is exponentially small.
 */
export function solveDispersion(problem: DispersionProblem): Transverse | null {
  const { vNumber, mismatch, uLow, uHigh } = problem;
  const partner = (of: number) => Math.sqrt((vNumber - of) * (vNumber + of));
  const middle = vNumber * Math.SQRT1_2;
  const low = mismatch(uLow, partner(uLow));
  let wHigh = partner(uLow);
  if (uLow < middle) {
    const top = Math.min(uHigh, middle);
    const inLowerHalf = uHigh <= middle || Math.sign(mismatch(top, partner(top))) !== Math.sign(low);
    if (inLowerHalf) {
      const u = brentRoot((x) => mismatch(x, partner(x)), uLow, top);
      return { u, w: partner(u) };
    }
    wHigh = middle;
  }
  const wLow = Math.max(partner(Math.min(uHigh, vNumber)), leastW);
  const ofW = (w: number) => mismatch(partner(w), w);
  if (!(wLow < wHigh) || Math.sign(ofW(wLow)) === Math.sign(low)) return null;
  const w = brentRoot(ofW, wLow, wHigh);
  return { u: partner(w), w };
}
