import type { Quadrature } from './gauss-legendre.ts';

const kept = new Map<number, Quadrature>();

/**
 * Nodes and weights for the mean of a function over the standard normal distribution; the weights add up to 1.
 *
 * Valid for 1 to 64 nodes. Exact for polynomials up to degree 2·count − 1.
 *
 * @source M. Abramowitz and I. Stegun, Handbook of Mathematical Functions, 25.4.46 (from memory), rescaled to the
 *   probabilists' weight; nodes by Newton's method on the orthonormal recurrence
 */
export function gaussHermite(count: number): Quadrature {
  const found = kept.get(count);
  if (found !== undefined) return found;
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  // The orthonormal polynomial of degree `count` and the one below it, at x.
  const at = (x: number): readonly [number, number] => {
    let below = 0;
    let here = 1;
    for (let n = 0; n < count; n += 1) {
      const above = (x * here - Math.sqrt(n) * below) / Math.sqrt(n + 1);
      below = here;
      here = above;
    }
    return [here, below];
  };
  const found0: number[] = [];
  for (let i = 0; i < Math.ceil(count / 2); i += 1) {
    // start from the asymptotic place of the largest root, then step inwards, deflating by the roots found
    let x =
      i === 0
        ? Math.sqrt(4 * count + 2) - 1.1 * (4 * count + 2) ** (-1 / 6)
        : found0[i - 1]! -
          (i === 1 ? 1.6 * (count + 1) ** (-1 / 6) * 0.8 : (found0[i - 2]! - found0[i - 1]!) * 0.95);
    if (count % 2 === 1 && i === (count - 1) / 2) x = 0;
    for (let step = 0; step < 100; step += 1) {
      const [value, below] = at(x);
      const slope = Math.sqrt(count) * below;
      let pull = 0;
      for (const root of found0) pull += 1 / (x - root) + 1 / (x + root);
      const change = value / (slope - value * pull);
      x -= change;
      if (Math.abs(change) < 1e-15 * (1 + Math.abs(x))) break;
    }
    found0.push(Math.abs(x));
    const [, below] = at(x);
    const weight = 1 / (count * below * below);
    nodes[count - 1 - i] = Math.abs(x);
    nodes[i] = -Math.abs(x);
    weights[count - 1 - i] = weight;
    weights[i] = weight;
  }
  if (count % 2 === 1) nodes[(count - 1) / 2] = 0;
  const quadrature = { nodes, weights };
  kept.set(count, quadrature);
  return quadrature;
}
