import { OutOfRange } from '../out-of-range.ts';
import { besselJ } from './bessel-j.ts';
import { mustBeOrder } from './bessel-order.ts';

/**
 * The `rank`-th positive zero j_{n,m} of J_n, rank m = 1, 2, … Relative error below 4e-16·(1 + n/20) for n ≤ 200.
 *
 * Olver's uniform approximation (McMahon's for n = 0) as first guess, always far nearer than half a spacing; then
 * Newton's method.
 *
 * @throws {OutOfRange} if the order is not 0, 1, 2, … or the rank not 1, 2, 3, …
 * @source Abramowitz & Stegun 9.5.12 and 9.5.22 (from memory)
 */
export function besselZero(order: number, rank: number): number {
  mustBeOrder(order, 'besselZero order');
  if (!Number.isInteger(rank) || rank < 1) {
    throw new OutOfRange({
      where: 'besselZero rank',
      what: `${rank} is not a rank 1, 2, 3, …`,
      mend: 'Give a whole number from 1 on.',
    });
  }
  let x = order === 0 ? mcMahonOfOrder0(rank) : olverEstimate(order, rank);
  for (let turn = 0; turn < 20; turn++) {
    const value = besselJ(order, x);
    const slope = (order / x) * value - besselJ(order + 1, x);
    const step = value / slope;
    x -= step;
    if (Math.abs(step) < 1e-9 * x) break; // quadratic: the next step would be below 1e-17
  }
  return x;
}

/** All positive zeros of J_n below `limit`, rising. */
export function besselZerosBelow(order: number, limit: number): number[] {
  const zeros: number[] = [];
  for (let rank = 1; ; rank++) {
    const zero = besselZero(order, rank);
    if (!(zero < limit)) return zeros;
    zeros.push(zero);
  }
}

function mcMahonOfOrder0(rank: number): number {
  const beta = (rank - 0.25) * Math.PI;
  const eighth = 1 / (8 * beta);
  return beta + eighth - (124 / 3) * eighth ** 3;
}

/** n·z(ζ) with ζ = n^(−2/3) a_m, a_m the m-th zero of the Airy function. */
function olverEstimate(order: number, rank: number): number {
  const t = (3 * Math.PI * (4 * rank - 1)) / 8;
  const airyZeroPower = t * (1 + 5 / (48 * t * t) - 5 / (36 * t ** 4)) ** 1.5; // (−a_m)^1.5
  const target = (2 / 3) * (airyZeroPower / order); // = √(z² − 1) − arccos(1/z)
  // Put z = sec φ: the target is tan φ − φ, which rises steadily; solved in p = tan φ.
  let p = target < 1 ? Math.cbrt(3 * target) : target + Math.PI / 2;
  for (let turn = 0; turn < 30; turn++) {
    const step = ((p - Math.atan(p) - target) * (1 + p * p)) / (p * p);
    p = Math.max(p - step, p / 4);
    if (Math.abs(step) < 1e-6 * p) break;
  }
  return order * Math.sqrt(1 + p * p);
}
