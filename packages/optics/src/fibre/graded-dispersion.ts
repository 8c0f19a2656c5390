import { brentRoot } from '../numerics/brent.ts';
import { edgeLogSlope } from './cladding-field.ts';
import { solveDispersion, type Transverse } from './dispersion.ts';
import { type GradedChain, runChain } from './graded-chain.ts';

/** How a trial (u, w) misses being a mode, and how many modes lie below it. */
export interface Trial {
  /** Sine of the angle between the two runs at the joint: 0 at a mode, of the sign (−1)^below. */
  readonly mismatch: number;
  /** Modes of this l with a smaller u. */
  readonly below: number;
}

/** Below this a mismatch is rounding; a search would only bisect in the noise. At l = 0 near cut-off every digit counts. */
const noise = 1e-15;

/** How far u (with w, V² = u² + w²) is from a mode LP_lm: mismatch of value and slope at the joint, and the roots below it. */
export function tryGraded(chain: GradedChain, l: number, vNumber: number, u: number, w: number): Trial {
  runChain(chain, l, vNumber, u, edgeLogSlope(l, w));
  const scale = (2 * chain.joint) / (u + l + 1); // about one radian at the joint, so that value and slope weigh alike
  const outValue = chain.outwardValue;
  const outSlope = chain.outwardSlope * scale;
  const inValue = chain.inwardValue;
  const inSlope = chain.inwardSlope * scale;
  const mismatch =
    (outSlope * inValue - outValue * inSlope) /
    (Math.hypot(outValue, outSlope) * Math.hypot(inValue, inSlope));
  const passed = chain.outwardZeros + chain.inwardZeros;
  // Each mode passed turns the sign of the mismatch; so it also tells whether the next one was passed.
  const below = mismatch >= 0 === (passed % 2 === 0) ? passed : passed + 1;
  return { mismatch: l > 0 && Math.abs(mismatch) < noise ? 0 : mismatch, below };
}

/** Narrows `low` and `high` until exactly the m-th mode lies between them; `below` counts modes under a value. */
function isolate(below: (x: number) => number, m: number, low: number, high: number): [number, number] {
  let underLow = below(low);
  let underHigh = below(high);
  for (let turn = 0; turn < 60 && (underLow !== m - 1 || underHigh !== m); turn++) {
    if (underLow >= m) {
      high = low;
      underHigh = underLow;
      low *= 0.9;
      underLow = below(low);
    } else {
      const middle = (low + high) / 2;
      const underMiddle = below(middle);
      if (underMiddle >= m) {
        high = middle;
        underHigh = underMiddle;
      } else {
        low = middle;
        underLow = underMiddle;
      }
    }
  }
  return [low, high];
}

/** LP_lm of the truncated parabola, or `null` if it lies nearer to cut-off than doubles can tell. */
export function solveGraded(chain: GradedChain, l: number, m: number, vNumber: number): Transverse | null {
  const group = 2 * m + l - 1;
  const partner = (u: number) => Math.sqrt(Math.max((vNumber - u) * (vNumber + u), 0));
  // The endless parabola has u² = 2V·group; the truncated one lies below, by nothing a double shows deep in the core.
  const roof = Math.min(vNumber, Math.sqrt(2 * vNumber * group) * (1 + 1e-6));
  const floor = Math.sqrt(2 * vNumber * Math.max(group - 1, 0.1));
  const [uLow, uHigh] = isolate(
    (u) => tryGraded(chain, l, vNumber, u, partner(u)).below,
    m,
    Math.min(floor, 0.9 * roof),
    roof,
  );
  return solveDispersion({
    vNumber,
    mismatch: (u, w) => tryGraded(chain, l, vNumber, u, w).mismatch,
    uLow,
    uHigh,
  });
}

/** The V at which LP_lm appears: w = 0, u = V. 0 for LP01. */
export function solveGradedCutoff(chain: GradedChain, l: number, m: number): number {
  if (l === 0 && m === 1) return 0;
  const group = 2 * m + l - 1;
  // For l = 0 the level R'(1) = 0 at V = 0 belongs to LP01, so the count is of modes guided above, as for the others.
  const [low, high] = isolate(
    (v) => tryGraded(chain, l, v, v, 0).below,
    m,
    2 * (group - 1),
    2 * group * (1 + 1e-6),
  );
  return brentRoot((v) => tryGraded(chain, l, v, v, 0).mismatch, low, high);
}
