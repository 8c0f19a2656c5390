import { OutOfRange } from '../out-of-range.ts';
import {
  besselI0Near,
  besselI1Near,
  besselK0Far,
  besselK0Middle,
  besselK0Near,
  besselK1Far,
  besselK1Middle,
  besselK1Near,
} from './bessel-chebyshev.ts';
import { mustBeOrder } from './bessel-order.ts';
import { chebyshevSeries } from './chebyshev.ts';

/**
 * eˣ K₀(x), modified Bessel function of the second kind without its decay, x > 0 (not checked: called millions of
 * times). Relative error below 1e-15.
 *
 * @source K₀ = −ln(x/2) I₀ + even series: Abramowitz & Stegun 9.6.13 (from memory); coefficients in `bessel-chebyshev.ts`
 */
export function besselK0Scaled(x: number): number {
  if (x <= 2) {
    const t = (x * x) / 2 - 1;
    return (
      Math.exp(x) * (chebyshevSeries(besselK0Near, t) - Math.log(x / 2) * chebyshevSeries(besselI0Near, t))
    );
  }
  return x <= 8
    ? chebyshevSeries(besselK0Middle, 16 / (3 * x) - 5 / 3) / Math.sqrt(x)
    : chebyshevSeries(besselK0Far, 16 / x - 1) / Math.sqrt(x);
}

/** eˣ K₁(x); accuracy, range and source as for `besselK0Scaled`. */
export function besselK1Scaled(x: number): number {
  if (x <= 2) {
    const t = (x * x) / 2 - 1;
    return (
      Math.exp(x) *
      (chebyshevSeries(besselK1Near, t) / x + Math.log(x / 2) * x * chebyshevSeries(besselI1Near, t))
    );
  }
  return x <= 8
    ? chebyshevSeries(besselK1Middle, 16 / (3 * x) - 5 / 3) / Math.sqrt(x)
    : chebyshevSeries(besselK1Far, 16 / x - 1) / Math.sqrt(x);
}

/**
 * eˣ K_n(x) for a whole order n = 0, 1, 2, … and x > 0, by the upward recurrence, which is stable.
 *
 * Relative error below 1e-14 for n ≤ 300. Infinity where the value itself passes 1.8e308 (large n, small x); ask
 * `besselKRatio` there.
 *
 * @throws {OutOfRange} if the order is not 0, 1, 2, … or x is not above 0
 * @source recurrence: Abramowitz & Stegun 9.6.26 (from memory)
 */
export function besselKScaled(order: number, x: number): number {
  mustBeOrder(order, 'besselKScaled');
  mustBeAbove0(x, 'besselKScaled');
  if (order === 0) return besselK0Scaled(x);
  let below = besselK0Scaled(x);
  let value = besselK1Scaled(x);
  for (let k = 1; k < order; k++) {
    const above = below + ((2 * k) / x) * value;
    below = value;
    value = above;
  }
  return value;
}

/** `fillBesselKRescaled` counts in these. */
export const besselKRescaling = 1e200;

/**
 * eˣ K_n(x) as `out[0]`·1e200^`out[1]`, for comparing values of which each alone would overflow. No checks: order 0,
 * 1, 2, …; x above 0. Accuracy and source as for `besselKScaled`.
 */
export function fillBesselKRescaled(order: number, x: number, out: Float64Array): void {
  let below = besselK0Scaled(x);
  let value = order === 0 ? below : besselK1Scaled(x);
  let rescalings = 0;
  for (let k = 1; k < order; k++) {
    const above = below + ((2 * k) / x) * value;
    below = value;
    value = above;
    if (value > besselKRescaling) {
      value /= besselKRescaling;
      below /= besselKRescaling;
      rescalings++;
    }
  }
  out[0] = value;
  out[1] = rescalings;
}

/**
 * K_{n+1}(x)/K_n(x) for x > 0; never overflows. Relative error below 1e-15·(1 + n/10) at worst.
 *
 * @throws {OutOfRange} if the order is not 0, 1, 2, … or x is not above 0
 * @source the recurrence of `besselKScaled`, divided by K_n
 */
export function besselKRatio(order: number, x: number): number {
  mustBeOrder(order, 'besselKRatio');
  mustBeAbove0(x, 'besselKRatio');
  let ratio = besselK1Scaled(x) / besselK0Scaled(x);
  for (let k = 1; k <= order; k++) ratio = (2 * k) / x + 1 / ratio;
  return ratio;
}

function mustBeAbove0(x: number, where: string): void {
  if (!(x > 0 && Number.isFinite(x))) {
    throw new OutOfRange({ where, what: `${x} is not above 0`, mend: 'Give a finite x above 0.' });
  }
}
