import { OutOfRange } from '../out-of-range.ts';

/**
 * A root of `f` between `low` and `high`, where f must differ in sign; to `tolerance` (absolute) or the last digits.
 *
 * Never leaves the bracket and always ends: inverse quadratic or secant steps where they help, bisection otherwise.
 *
 * @throws {OutOfRange} if f has the same sign at both ends, or is not a number there
 * @source R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 4 (from memory)
 */
export function brentRoot(f: (x: number) => number, low: number, high: number, tolerance = 0): number {
  let best = high;
  let fBest = f(high);
  let opposite = low;
  let fOpposite = f(low);
  if (fOpposite === 0) return low;
  if (fBest === 0) return high;
  if (!(fBest * fOpposite < 0) && !(Math.sign(fBest) * Math.sign(fOpposite) < 0)) {
    throw new OutOfRange({
      where: 'brentRoot',
      what: `no change of sign between ${low} (${fOpposite}) and ${high} (${fBest})`,
      mend: 'Give ends between which the function changes sign.',
    });
  }
  let previous = opposite;
  let fPrevious = fOpposite;
  let step = best - previous;
  let stepBefore = step;
  for (let turn = 0; turn < 400; turn++) {
    if (Math.sign(fBest) === Math.sign(fOpposite)) {
      opposite = previous;
      fOpposite = fPrevious;
      step = best - previous;
      stepBefore = step;
    }
    if (Math.abs(fOpposite) < Math.abs(fBest)) {
      previous = best;
      best = opposite;
      opposite = previous;
      fPrevious = fBest;
      fBest = fOpposite;
      fOpposite = fPrevious;
    }
    const small = 2 * Number.EPSILON * Math.abs(best) + tolerance / 2;
    const half = (opposite - best) / 2;
    if (Math.abs(half) <= small || fBest === 0) return best;
    if (Math.abs(stepBefore) < small || Math.abs(fPrevious) <= Math.abs(fBest)) {
      step = half;
      stepBefore = half;
    } else {
      const s = fBest / fPrevious;
      let p: number;
      let q: number;
      if (previous === opposite) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const t = fPrevious / fOpposite;
        const r = fBest / fOpposite;
        p = s * (2 * half * t * (t - r) - (best - previous) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      if (2 * p < Math.min(3 * half * q - Math.abs(small * q), Math.abs(stepBefore * q))) {
        stepBefore = step;
        step = p / q;
      } else {
        step = half;
        stepBefore = half;
      }
    }
    previous = best;
    fPrevious = fBest;
    best += Math.abs(step) > small ? step : half > 0 ? small : -small;
    fBest = f(best);
  }
  return best;
}

/** Where a search for the least value ended, and why. */
export interface LineMinimum {
  readonly x: number;
  readonly value: number;
  readonly evaluations: number;
  /** `converged`: x is known to the tolerance. `evaluations spent`: it is only the best seen. */
  readonly reason: 'converged' | 'evaluations spent';
}

/**
 * A local minimum of `f` between `low` and `high`: golden section with parabolic steps.
 *
 * x cannot be found better than about √ε relative, for f is flat there; the value is good to rounding.
 *
 * @param tolerance absolute, in x; the default is 1e-9 of the interval
 * @source R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 5 (from memory)
 */
export function brentMinimum(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance = 1e-9 * Math.abs(high - low),
): LineMinimum {
  const golden = (3 - Math.sqrt(5)) / 2;
  let a = Math.min(low, high);
  let b = Math.max(low, high);
  let x = a + golden * (b - a);
  let w = x;
  let v = x;
  let fx = f(x);
  let fw = fx;
  let fv = fx;
  let step = 0;
  let stepBefore = 0;
  for (let evaluations = 1; evaluations < 200; evaluations++) {
    const middle = (a + b) / 2;
    const small = 1.5e-8 * Math.abs(x) + tolerance / 3;
    if (Math.abs(x - middle) <= 2 * small - (b - a) / 2) {
      return { x, value: fx, evaluations, reason: 'converged' };
    }
    let parabolic = false;
    if (Math.abs(stepBefore) > small) {
      const r = (x - w) * (fx - fv);
      let q = (x - v) * (fx - fw);
      let p = (x - v) * q - (x - w) * r;
      q = 2 * (q - r);
      if (q > 0) p = -p;
      else q = -q;
      const limit = stepBefore;
      stepBefore = step;
      if (Math.abs(p) < Math.abs((q * limit) / 2) && p > q * (a - x) && p < q * (b - x)) {
        step = p / q;
        const u = x + step;
        if (u - a < 2 * small || b - u < 2 * small) step = x < middle ? small : -small;
        parabolic = true;
      }
    }
    if (!parabolic) {
      stepBefore = x < middle ? b - x : a - x;
      step = golden * stepBefore;
    }
    const u = Math.abs(step) >= small ? x + step : x + (step > 0 ? small : -small);
    const fu = f(u);
    if (fu <= fx) {
      if (u < x) b = x;
      else a = x;
      v = w;
      fv = fw;
      w = x;
      fw = fx;
      x = u;
      fx = fu;
    } else {
      if (u < x) a = u;
      else b = u;
      if (fu <= fw || w === x) {
        v = w;
        fv = fw;
        w = u;
        fw = fu;
      } else if (fu <= fv || v === x || v === w) {
        v = u;
        fv = fu;
      }
    }
  }
  return { x, value: fx, evaluations: 200, reason: 'evaluations spent' };
}
