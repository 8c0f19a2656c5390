import { leastSquares } from '@coreward/optics';
import { covarianceOf, type Scatter } from '../scatter.ts';

/** How the light seems to have drifted from the first reading to the last. */
export interface LightDrift {
  /** Of the light, as a share of it; positive if it grew. */
  readonly share: number;
  /** How likely it is that it drifted at all, 0 to 1; drift and none are equally likely beforehand. */
  readonly likelihood: number;
  /** By how much the fit's answer would move with the drift taken off. @param slopes of the answer along the parameters */
  readonly shiftOf: (slopes: readonly number[]) => number;
}

/** Drift of a laser's light while a scan is read, as a share: one standard deviation (common practice, no source). */
const usualDrift = 0.03;

/**
 * Whether the light drifted evenly while a scan was read, from what the fit left over: an edge fits a slope of the light
 * partly, by moving its middle.
 *
 * @param residuals curve less reading, in the order in which they were read
 * @param columns slopes of the curve along the parameters
 * @param light what drifts: what reached the detector, without its background, in the unit of the readings
 * @param scatterBy scatter of the residuals about the curve with these columns
 * @returns null where there are too few readings, or they cannot show it
 * @source first-order change of a least-squares fit by one more parameter: elementary; odds and size of one whose size is
 *   known beforehand to a standard deviation: elementary, with Student's law for the normal one
 */
export function lightDrift(
  residuals: readonly number[],
  columns: readonly (readonly number[])[],
  light: readonly number[],
  scatterBy: (columns: readonly (readonly number[])[]) => Scatter,
): LightDrift | null {
  const n = residuals.length;
  const freedom = n - columns.length - 1;
  if (freedom < 3) return null;
  const drifting = light.map((y, i) => y * (i / (n - 1) - 0.5));
  const all = [...columns, drifting];
  const fit = leastSquares(all, residuals);
  const along = leastSquares(columns, drifting);
  if (fit === null || along === null) return null;
  const seen = -fit.coefficients.at(-1)!;
  const variance = covarianceOf(fit.inverse, all, scatterBy(all).variances).at(-1)!.at(-1)!;
  const trust = usualDrift ** 2 / (usualDrift ** 2 + variance);
  const odds = Math.sqrt(1 - trust) * (1 + seen ** 2 / variance / freedom) ** ((trust * (freedom + 1)) / 2);
  const share = trust * seen;
  return {
    share,
    likelihood: Number.isFinite(odds) ? odds / (1 + odds) : 1,
    shiftOf: (slopes) => share * slopes.reduce((sum, slope, j) => sum + slope * along.coefficients[j]!, 0),
  };
}
