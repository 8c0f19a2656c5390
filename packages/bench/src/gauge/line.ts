import { leastSquares } from '@coreward/optics';
import { lastDigit } from './last-digit.ts';
import { covarianceOf, scatterOf, variancesOverKinds } from './scatter.ts';

/** A straight line y = offset + slope·x laid through readings. */
export interface Line {
  readonly offset: number;
  readonly slope: number;
  /** Of offset and slope. */
  readonly covariance: readonly (readonly number[])[];
  /** Readings less two; 0 where the uncertainty is the stated one. */
  readonly freedom: number;
  /** Degrees of freedom of the covariance: none to be learnt where it is the stated one, or that of the last digit alone. */
  readonly doubtFreedom: number;
  readonly curve: readonly number[];
  readonly residuals: readonly number[];
}

/**
 * The straight line of least squares, every reading with the same weight. Its covariance is learnt from what the
 * readings scatter about it, at least what their last digit leaves open; two readings show no scatter, and take the
 * stated uncertainty of one.
 *
 * @param stated standard uncertainty of one y
 * @returns null where x is the same throughout
 */
export function lineThrough(x: readonly number[], y: readonly number[], stated: number): Line | null {
  const middle = x.reduce((sum, v) => sum + v, 0) / x.length;
  const columns = [x.map(() => 1), x.map((v) => v - middle)];
  const fit = x.length < 2 ? null : leastSquares(columns, y);
  if (fit === null) return null;
  const [level, slope] = fit.coefficients as [number, number];
  const curve = x.map((v) => level + slope * (v - middle));
  const freedom = x.length - 2;
  const seen = freedom > 0 ? variancesOverKinds(scatterOf(fit.residuals, columns, curve)) : null;
  // readings that were rounded alike may lie on a line by chance: even from −½ to ½ of a step, but no more than stated
  const least = Math.min(lastDigit(y) / Math.sqrt(12), stated) ** 2;
  const variances = seen?.map((variance) => Math.max(variance, least)) ?? x.map(() => stated ** 2);
  const learnt = seen?.some((variance) => variance > least) ?? false;
  const about = covarianceOf(fit.inverse, columns, variances);
  // from the middle of the readings to x = 0
  const [vLevel, both, vSlope] = [about[0]![0]!, about[0]![1]!, about[1]![1]!];
  const covariance = [
    [vLevel - 2 * middle * both + middle ** 2 * vSlope, both - middle * vSlope],
    [both - middle * vSlope, vSlope],
  ];
  return {
    offset: level - slope * middle,
    slope,
    covariance,
    freedom,
    doubtFreedom: learnt ? freedom : Number.POSITIVE_INFINITY,
    curve,
    residuals: fit.residuals,
  };
}
