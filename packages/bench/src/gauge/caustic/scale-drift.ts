import type { LeastSquares } from '@coreward/optics';
import { lightDrift } from '../light-drift.ts';
import { scatterOf } from '../scatter.ts';

/** Drift of the square of a scale while a caustic is read, as a share: one standard deviation (common practice, no source). */
const usualDrift = 0.05;

/** So many readings tell a drift as well as more of them. */
const looked = 1000;

/**
 * Standard uncertainty of the waist's position, m, by a scale that drifts in the order of the readings: only readings far from
 * the waist show it. In the squares of the diameters it drifts as light does.
 *
 * @param fit of the weighted squares: coefficients of 1, t and t²
 * @param squares of the diameters on the curve, weighted alike
 */
export function scaleDriftDoubt(
  { coefficients, residuals }: LeastSquares,
  columns: readonly (readonly number[])[],
  squares: readonly number[],
): number {
  const [, b, c] = coefficients as [number, number, number];
  const slopes = [0, -1 / (2 * c), b / (2 * c * c)];
  const stride = Math.ceil(residuals.length / looked);
  const some = (of: readonly number[]): number[] => of.filter((_, i) => i % stride === 0);
  const rest = some(residuals);
  const left = rest.map((one) => -one);
  const drift = lightDrift(
    left,
    columns.map(some),
    some(squares),
    (by) => scatterOf(rest, by, []),
    usualDrift,
  );
  return drift?.doubtOf(slopes) ?? 0;
}
