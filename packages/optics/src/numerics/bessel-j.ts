import { OutOfRange } from '../out-of-range.ts';
import { besselJ0Near, besselJ1Near, besselP0, besselP1, besselQ0, besselQ1 } from './bessel-chebyshev.ts';
import { mustBeOrder } from './bessel-order.ts';
import { chebyshevSeries } from './chebyshev.ts';

/** Where the Chebyshev series in x² gives way to amplitude and phase. */
const near = 8;

/**
 * J₀(x), Bessel function of the first kind. Error below 5e-16 of the envelope √(2/πx), any finite x up to 1e4.
 *
 * @source amplitude-and-phase form: Abramowitz & Stegun 9.2.5, 9.2.9 (from memory); coefficients in `bessel-chebyshev.ts`
 */
export function besselJ0(x: number): number {
  const size = Math.abs(x);
  if (size <= near) return chebyshevSeries(besselJ0Near, (size * size) / 32 - 1);
  const t = 128 / (size * size) - 1;
  // cos and sin of x − π/4 from those of x, because subtracting π/4 from a large x would cost digits.
  const sine = Math.sin(size);
  const cosine = Math.cos(size);
  return (
    (chebyshevSeries(besselP0, t) * (cosine + sine) -
      (chebyshevSeries(besselQ0, t) / size) * (sine - cosine)) /
    Math.sqrt(Math.PI * size)
  );
}

/** J₁(x); accuracy, range and source as for `besselJ0`. */
export function besselJ1(x: number): number {
  const size = Math.abs(x);
  if (size <= near) return x * chebyshevSeries(besselJ1Near, (size * size) / 32 - 1);
  const t = 128 / (size * size) - 1;
  const sine = Math.sin(size);
  const cosine = Math.cos(size);
  const value =
    (chebyshevSeries(besselP1, t) * (sine - cosine) +
      (chebyshevSeries(besselQ1, t) / size) * (sine + cosine)) /
    Math.sqrt(Math.PI * size);
  return x < 0 ? -value : value;
}

/**
 * From which order the ratios J_k/J_{k−1} are run down: far enough above `order` for the arbitrary start to be
 * forgotten. Past the turning point J falls like exp(−0.94 k^1.5/√order), and the memory of the start with its square.
 */
function ratioStart(order: number): number {
  return order + Math.ceil(10 * Math.cbrt(order)) + 14;
}

/**
 * J_n(x) for a whole order n = 0, 1, 2, …
 *
 * Upward recurrence from J₀ and J₁ while n ≤ x, where it is stable; beyond, the ratios J_k/J_{k−1} run down from far
 * above (Miller's algorithm, which cannot overflow in this form). Error below 2e-14 of the value, or of the envelope
 * √(2/πx) past the turning point, for n ≤ 400 and x ≤ 4000. Underflows to 0 where J_n does.
 *
 * @throws {OutOfRange} if the order is not 0, 1, 2, … or x is not finite
 * @source Abramowitz & Stegun 9.1.27 and section 9.12 (from memory)
 */
export function besselJ(order: number, x: number): number {
  mustBeOrder(order, 'besselJ');
  if (!Number.isFinite(x)) throw notFinite('besselJ', x);
  if (order === 0) return besselJ0(x);
  if (order === 1 && (x > 1 || x < -1)) return besselJ1(x);
  const size = Math.abs(x);
  const sign = x < 0 && order % 2 === 1 ? -1 : 1;
  if (size === 0) return 0;
  const top = Math.min(order, Math.floor(size));
  let below = besselJ0(size);
  let value = below;
  if (top > 0) {
    value = besselJ1(size);
    for (let k = 1; k < top; k++) {
      const above = ((2 * k) / size) * value - below;
      below = value;
      value = above;
    }
  }
  if (top === order) return sign * value;
  // J_top(x) with top = ⌊x⌋ lies before its first zero, so the ratios above it are positive and finite.
  let ratio = 0;
  let product = 1;
  for (let k = ratioStart(order); k > top; k--) {
    ratio = 1 / ((2 * k) / size - ratio);
    if (k <= order) product *= ratio;
  }
  return sign * value * product;
}

/**
 * J_0(x) … J_{N}(x) at once into `out`, N = out.length − 1, for x ≥ 0. Accuracy and source as for `besselJ`;
 * the whole row costs little more than its last entry alone.
 *
 * @throws {OutOfRange} if x is negative or not finite
 */
export function fillBesselJ(x: number, out: Float64Array): void {
  if (!(x >= 0 && Number.isFinite(x))) throw notFinite('fillBesselJ', x);
  const order = out.length - 1;
  if (order < 0) return;
  out[0] = besselJ0(x);
  if (x === 0) {
    out.fill(0, 1);
    return;
  }
  const top = Math.min(order, Math.floor(x));
  if (top > 0) out[1] = besselJ1(x);
  for (let k = 1; k < top; k++) out[k + 1] = ((2 * k) / x) * out[k]! - out[k - 1]!;
  if (top === order) return;
  let ratio = 0;
  for (let k = ratioStart(order); k > order; k--) ratio = 1 / ((2 * k) / x - ratio);
  for (let k = order; k > top; k--) {
    ratio = 1 / ((2 * k) / x - ratio);
    out[k] = ratio;
  }
  for (let k = top + 1; k <= order; k++) out[k] = out[k]! * out[k - 1]!;
}

function notFinite(where: string, x: number): OutOfRange {
  return new OutOfRange({
    where,
    what: `${x} is no argument for it`,
    mend: where === 'fillBesselJ' ? 'Give a finite x from 0 on.' : 'Give a finite x.',
  });
}
