import { brentRoot } from '@coreward/optics';

/**
 * peak·exp(−k₁u² − k₂u⁴ − …), u the distance from the centre in some unit: a smooth curve that is even about its centre.
 * Parameters in this order: peak, centre, k₁, k₂, ….
 */
export const evenCurveAt = (p: readonly number[], x: number, unit: number): number =>
  p[0]! * Math.exp(-exponent(p, (x - p[1]!) / unit));

/** Columns of ∂intensity/∂(peak, centre, k₁, k₂, …). @source elementary: the slopes of the curve above */
export function evenCurveSlopes(
  x: readonly number[],
  p: readonly number[],
  unit: number,
): readonly (readonly number[])[] {
  const columns = p.map(() => new Array<number>(x.length).fill(0));
  const [byPeak, byCentre] = columns as [number[], number[]];
  for (let i = 0; i < x.length; i++) {
    const u = (x[i]! - p[1]!) / unit;
    const height = Math.exp(-exponent(p, u));
    let power = 1;
    let steep = 0;
    for (let k = 2; k < p.length; k++) {
      // k₁u² + k₂u⁴ + …: the term of p[k] goes with u to the power 2(k − 1), and rises with one less
      steep += 2 * (k - 1) * p[k]! * power * u;
      power *= u * u;
      columns[k]![i] = -p[0]! * height * power;
    }
    byPeak[i] = height;
    byCentre[i] = (p[0]! * height * steep) / unit;
  }
  return columns;
}

/** k₁u² + k₂u⁴ + … */
export const exponent = (p: readonly number[], u: number): number => {
  let sum = 0;
  for (let k = p.length - 1; k >= 2; k--) sum = (sum + p[k]!) * u * u;
  return sum;
};

/** Where exp(−exponent) falls to `share`, in units; null if not before `farthest`. */
export function crossing(p: readonly number[], share: number, farthest: number): number | null {
  const height = (u: number): number => exponent(p, u) + Math.log(share);
  const steps = 200;
  for (let i = 1; i <= steps; i++) {
    const u = (farthest * i) / steps;
    if (height(u) >= 0) return brentRoot(height, u - farthest / steps, u);
  }
  return null;
}
