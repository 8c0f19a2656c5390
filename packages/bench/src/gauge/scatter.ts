import { leastSquares } from '@coreward/optics';

/** How far readings scatter about a curve, and by which rule. */
export interface Scatter {
  /** `even`: the same everywhere. `growing`: more where the reading is larger. */
  readonly rule: 'even' | 'growing';
  /** Variance of each reading. */
  readonly variances: readonly number[];
}

/** Scatter of a reading of nought over the growth of scatter at the largest one, for the rules that are tried. */
const floors = [1, 0.3, 0.1, 0.03, 0.01];

/**
 * Scatter of readings from what a fit left over: the same for all, or the root of a floor and a share of the reading
 * squared, whichever makes the residuals most likely.
 *
 * @param residuals of least squares with equal weights
 * @param columns slopes of the curve along each parameter; fewer than readings
 * @param curve the fitted values, where growing scatter is measured against
 * @source likelihood of a normal law with its scale estimated; elementary
 */
export function scatterOf(
  residuals: readonly number[],
  columns: readonly (readonly number[])[],
  curve: readonly number[],
): Scatter {
  const freedom = residuals.length - columns.length;
  const largest = curve.reduce((most, y) => Math.max(most, Math.abs(y)), 0);
  const even = { rule: 'even' as const, sizes: residuals.map(() => 1) };
  const growing = floors.map((floor) => ({
    rule: 'growing' as const,
    sizes: curve.map((y) => Math.hypot(y, floor * largest)),
  }));
  let best: Scatter = { rule: 'even', variances: [] };
  let highest = Number.NEGATIVE_INFINITY;
  for (const { rule, sizes } of [even, ...growing]) {
    // what a fit with such weights would leave: equal weights let large readings bend the curve near small ones
    const weighted = leastSquares(
      columns.map((column) => column.map((x, i) => x / sizes[i]!)),
      residuals.map((r, i) => r / sizes[i]!),
    );
    if (weighted === null) continue;
    const scale = weighted.squares / freedom;
    const likelihood =
      -0.5 * residuals.length * Math.log(scale) - sizes.reduce((sum, size) => sum + Math.log(size), 0);
    if (likelihood > highest || best.variances.length === 0) {
      best = { rule, variances: sizes.map((size) => scale * size * size) };
      highest = likelihood;
    }
  }
  return best;
}

/**
 * Covariance of least-squares coefficients whose readings do not all scatter alike: H·diag(variances)·Hᵀ with
 * H = (AᵀA)⁻¹Aᵀ.
 *
 * @source H. White, Econometrica 48, 817 (1980), with modelled variances (from memory)
 */
export function covarianceOf(
  inverse: readonly (readonly number[])[],
  columns: readonly (readonly number[])[],
  variances: readonly number[],
): readonly (readonly number[])[] {
  const gains = inverse.map((row) =>
    variances.map((_, i) => row.reduce((sum, x, j) => sum + x * columns[j]![i]!, 0)),
  );
  return gains.map((a) =>
    gains.map((b) => variances.reduce((sum, variance, i) => sum + a[i]! * b[i]! * variance, 0)),
  );
}

/** Standard uncertainty of a formula of correlated inputs, by its slopes. @source JCGM 100:2008, 5.2.2 (from memory) */
export function alongSlopes(slopes: readonly number[], covariance: readonly (readonly number[])[]): number {
  let sum = 0;
  for (const [i, a] of slopes.entries())
    for (const [j, b] of slopes.entries()) sum += a * b * covariance[i]![j]!;
  return Math.sqrt(Math.max(0, sum));
}
