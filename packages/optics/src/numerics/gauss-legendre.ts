import { OutOfRange } from '../out-of-range.ts';

/** A quadrature on [−1, 1]: ∫f ≈ Σ weights[i]·f(nodes[i]); nodes rise. */
export interface Quadrature {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const known = new Map<number, Quadrature>();

/**
 * Gauss-Legendre quadrature with `count` points: exact for polynomials up to degree 2·count − 1, to about 1e-15.
 *
 * Computed once per count and kept; the arrays are shared, so never write into them.
 *
 * @throws {OutOfRange} if the count is not a whole number from 1 to 4000
 * @source Newton's method on the Legendre recurrence, Abramowitz & Stegun 25.4.29 and 8.5.3 (from memory)
 */
export function gaussLegendre(count: number): Quadrature {
  const kept = known.get(count);
  if (kept !== undefined) return kept;
  if (!Number.isInteger(count) || count < 1 || count > 4000) {
    throw new OutOfRange({
      where: 'gaussLegendre count',
      what: `${count} is not a whole number from 1 to 4000`,
      mend: 'Ask for 1 to 4000 points.',
    });
  }
  const made = compute(count);
  known.set(count, made);
  return made;
}

function compute(count: number): Quadrature {
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < Math.ceil(count / 2); i++) {
    // Tricomi's first guess for the i-th zero, good to O(count⁻³) or better.
    let x = (1 - (count - 1) / (8 * count ** 3)) * Math.cos((Math.PI * (4 * i + 3)) / (4 * count + 2));
    let slope = 0;
    for (let turn = 0; turn < 10; turn++) {
      let below = 1;
      let value = x;
      for (let k = 2; k <= count; k++) {
        const above = ((2 * k - 1) * x * value - (k - 1) * below) / k;
        below = value;
        value = above;
      }
      slope = (count * (below - x * value)) / (1 - x * x);
      const step = value / slope;
      x -= step;
      if (Math.abs(step) < 4e-16) break;
    }
    if (count % 2 === 1 && i === (count - 1) / 2) x = 0; // by symmetry
    const weight = 2 / ((1 - x * x) * slope * slope);
    nodes[i] = -x;
    nodes[count - 1 - i] = x;
    weights[i] = weight;
    weights[count - 1 - i] = weight;
  }
  return { nodes, weights };
}

/** The same quadrature moved to [low, high]: nodes and weights are new arrays. */
export function gaussLegendreOn(low: number, high: number, count: number): Quadrature {
  const { nodes, weights } = gaussLegendre(count);
  const half = (high - low) / 2;
  const middle = (high + low) / 2;
  return { nodes: nodes.map((t) => middle + half * t), weights: weights.map((weight) => weight * half) };
}
