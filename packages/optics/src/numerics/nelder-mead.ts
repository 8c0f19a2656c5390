import { OutOfRange } from '../out-of-range.ts';

/** Where a search without derivatives ended, and why. */
export interface Minimum {
  readonly point: readonly number[];
  readonly value: number;
  readonly evaluations: number;
  /** `converged`: the simplex shrank to both tolerances. `evaluations spent`: the point is only the best seen. */
  readonly reason: 'converged' | 'evaluations spent';
}

/** When a search is content, and when it gives up. */
export interface SearchLimits {
  /** Largest distance within the last simplex, in units of each coordinate's first step; 1e-7 if left out. */
  readonly pointTolerance?: number;
  /** Largest difference of values within the last simplex; 1e-12 if left out. */
  readonly valueTolerance?: number;
  /** 400 times the number of coordinates if left out. */
  readonly evaluations?: number;
}

/**
 * A local minimum of `f` near `start` by the downhill simplex with coefficients that suit the number of coordinates.
 *
 * Meant for up to about ten coordinates. When it has converged it starts once more from there with a fresh simplex,
 * for a simplex can collapse short of the minimum. Values that are not numbers count as infinitely bad.
 *
 * @param steps first step along each coordinate; they also scale the coordinates
 * @throws {OutOfRange} if steps and start differ in number, a step is 0, or f is not a number at the start
 * @source J. A. Nelder and R. Mead, Comput. J. 7, 308 (1965); F. Gao and L. Han, Comput. Optim. Appl. 51, 259 (2012)
 *   for the coefficients (from memory)
 */
export function nelderMead(
  f: (point: readonly number[]) => number,
  start: readonly number[],
  steps: readonly number[],
  limits: SearchLimits = {},
): Minimum {
  const n = start.length;
  if (n === 0 || steps.length !== n || !steps.every((step) => step !== 0 && Number.isFinite(step))) {
    throw new OutOfRange({
      where: 'nelderMead steps',
      what: `[${steps.join(', ')}] are no first steps from [${start.join(', ')}]`,
      mend: 'Give one finite step other than 0 for each coordinate.',
    });
  }
  const { pointTolerance = 1e-7, valueTolerance = 1e-12, evaluations: most = 400 * n } = limits;
  let evaluations = 0;
  const vertexAt = (point: readonly number[]): Vertex => {
    evaluations++;
    const value = f(point);
    return { point, value: Number.isNaN(value) ? Number.POSITIVE_INFINITY : value };
  };
  let best = vertexAt(start);
  if (best.value === Number.POSITIVE_INFINITY) {
    throw new OutOfRange({
      where: 'nelderMead start',
      what: `the function has no finite value at [${start.join(', ')}]`,
      mend: 'Start where it has one.',
    });
  }
  for (const scale of [1, 0.1]) {
    const simplex = [
      best,
      ...steps.map((step, i) => vertexAt(best.point.map((x, j) => (i === j ? x + scale * step : x)))),
    ];
    for (;;) {
      simplex.sort((a, b) => a.value - b.value);
      best = simplex[0]!;
      if (hasShrunk(simplex, steps, pointTolerance, valueTolerance)) break;
      if (evaluations >= most) {
        return { point: best.point, value: best.value, evaluations, reason: 'evaluations spent' };
      }
      advance(simplex, vertexAt);
    }
  }
  return { point: best.point, value: best.value, evaluations, reason: 'converged' };
}

interface Vertex {
  readonly point: readonly number[];
  readonly value: number;
}

/** Reflects, expands, contracts or shrinks a sorted simplex, in place. */
function advance(simplex: Vertex[], vertexAt: (point: readonly number[]) => Vertex): void {
  const n = simplex.length - 1;
  const [expansion, contraction, shrinkage] =
    n > 1 ? [1 + 2 / n, 0.75 - 1 / (2 * n), 1 - 1 / n] : [2, 0.5, 0.5];
  const best = simplex[0]!;
  const last = simplex[n]!;
  const centre = best.point.map(
    (_, i) => simplex.slice(0, n).reduce((sum, { point }) => sum + point[i]!, 0) / n,
  );
  const along = (t: number) => vertexAt(centre.map((c, i) => c + t * (last.point[i]! - c)));
  const reflected = along(-1);
  if (reflected.value < best.value) {
    const expanded = along(-expansion);
    simplex[n] = expanded.value < reflected.value ? expanded : reflected;
    return;
  }
  if (reflected.value < simplex[n - 1]!.value) {
    simplex[n] = reflected;
    return;
  }
  const outside = reflected.value < last.value;
  const contracted = along(outside ? -contraction : contraction);
  if (contracted.value < Math.min(reflected.value, last.value)) {
    simplex[n] = contracted;
    return;
  }
  for (let i = 1; i <= n; i++) {
    const { point } = simplex[i]!;
    simplex[i] = vertexAt(best.point.map((x, j) => x + shrinkage * (point[j]! - x)));
  }
}

function hasShrunk(
  simplex: readonly Vertex[],
  steps: readonly number[],
  pointTolerance: number,
  valueTolerance: number,
): boolean {
  const best = simplex[0]!;
  if (!(simplex.at(-1)!.value - best.value <= valueTolerance)) return false;
  return simplex.every(({ point }) =>
    point.every((x, i) => {
      const rounding = 4 * Number.EPSILON * Math.abs(x);
      return Math.abs(x - best.point[i]!) <= pointTolerance * Math.abs(steps[i]!) + rounding;
    }),
  );
}
