/** How far readings scatter about a curve, and by which rule. */
export interface Scatter {
  /** `even`: the same everywhere. `proportional`: in proportion to the reading. */
  readonly rule: 'even' | 'proportional';
  /** Variance of each reading. */
  readonly variances: readonly number[];
}

/**
 * Scatter of readings from what a fit left over: the same for all, or in proportion to the reading, whichever makes the
 * residuals more likely.
 *
 * @param curve the fitted values, where scatter in proportion is measured against
 * @param freedom readings less parameters, above zero
 * @source likelihood of a normal law with its scale estimated; elementary
 */
export function scatterOf(residuals: readonly number[], curve: readonly number[], freedom: number): Scatter {
  const n = residuals.length;
  const even = residuals.reduce((sum, r) => sum + r * r, 0) / freedom;
  const largest = Math.max(...curve.map(Math.abs));
  const sizes = curve.map((y) => Math.max(Math.abs(y), 0.02 * largest));
  const proportional = residuals.reduce((sum, r, i) => sum + (r / sizes[i]!) ** 2, 0) / freedom;
  const evenLikelihood = -0.5 * n * Math.log(even);
  const proportionalLikelihood =
    -0.5 * n * Math.log(proportional) - sizes.reduce((sum, size) => sum + Math.log(size), 0);
  return proportionalLikelihood > evenLikelihood
    ? { rule: 'proportional', variances: sizes.map((size) => proportional * size * size) }
    : { rule: 'even', variances: residuals.map(() => even) };
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
