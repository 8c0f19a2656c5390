import { OutOfRange } from '../out-of-range.ts';
import { besselI0Far, besselI0Middle } from './bessel-chebyshev.ts';
import { mustBeOrder } from './bessel-order.ts';
import { chebyshevSeries } from './chebyshev.ts';

/**
 * e⁻ˣ I₀(x), modified Bessel function of the first kind without its growth, x ≥ 0 (not checked). Relative error
 * below 1e-15.
 *
 * @source coefficients in `bessel-chebyshev.ts`
 */
export function besselI0Scaled(x: number): number {
  return x <= 8
    ? chebyshevSeries(besselI0Middle, x / 4 - 1)
    : chebyshevSeries(besselI0Far, 16 / x - 1) / Math.sqrt(x);
}

/**
 * e⁻ˣ I_n(x) for a whole order n = 0, 1, 2, … and x ≥ 0: the ratios I_k/I_{k−1} run down from far above (Miller's
 * algorithm), times I₀.
 *
 * Relative error below 1e-14 for n ≤ 300, x ≤ 4000. Underflows to 0 where the value does.
 *
 * @throws {OutOfRange} if the order is not 0, 1, 2, … or x is negative or not finite
 * @source Abramowitz & Stegun 9.6.26 and section 9.12 (from memory)
 */
export function besselIScaled(order: number, x: number): number {
  mustBeOrder(order, 'besselIScaled');
  if (!(x >= 0 && Number.isFinite(x))) {
    throw new OutOfRange({
      where: 'besselIScaled',
      what: `${x} is no argument for it`,
      mend: 'Give a finite x from 0 on.',
    });
  }
  if (order === 0 || x === 0) return order === 0 ? besselI0Scaled(x) : 0;
  // I_k/I_n falls like exp(−(k² − n²)/2x); the memory of the start with its square, so 40 x forgets e⁻⁴⁰.
  const start = Math.ceil(Math.sqrt(order * order + 40 * x)) + 20;
  let ratio = 0;
  let product = 1;
  for (let k = start; k > 0; k--) {
    ratio = 1 / ((2 * k) / x + ratio);
    if (k <= order) product *= ratio;
  }
  return besselI0Scaled(x) * product;
}
