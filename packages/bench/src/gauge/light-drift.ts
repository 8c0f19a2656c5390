import { leastSquares } from '@coreward/optics';
import { covarianceOf, type Scatter } from './scatter.ts';

/** How the light seems to have drifted from the first reading to the last. */
export interface LightDrift {
  /** Of the light, as a share of it; positive if it grew. */
  readonly share: number;
  /** How likely it is that it drifted at all, 0 to 1. */
  readonly likelihood: number;
  /** Standard uncertainty that this leaves of an answer of the fit, which stays as it is. @param slopes of the answer along the parameters */
  readonly doubtOf: (slopes: readonly number[]) => number;
}

/** Drift of a laser's light while a scan is read, as a share: one standard deviation (common practice, no source). */
const usualLightDrift = 0.03;

/** Scans with a drift that matters to those without (common practice, no source). */
const oddsBefore = 0.5;

/**
 * Whether the light drifted evenly while a scan was read, from what the fit left over: an edge fits a slope of the light
 * partly, by moving its middle.
 *
 * @param residuals curve less reading, in the order in which they were read
 * @param columns slopes of the curve along the parameters
 * @param light what drifts: what reached the detector, without its background, in the unit of the readings
 * @param scatterBy scatter of the residuals about the curve with these columns
 * @param usual drift as a share, one standard deviation
 * @returns null where there are too few readings, or they cannot show it
 * @source first-order change of a least-squares fit by one more parameter: elementary; odds and size of one whose size is
 *   known beforehand to a standard deviation: elementary, with Student's law for the normal one; mean square
 *   of a mixture: elementary
 */
export function lightDrift(
  residuals: readonly number[],
  columns: readonly (readonly number[])[],
  light: readonly number[],
  scatterBy: (columns: readonly (readonly number[])[]) => Scatter,
  usual = usualLightDrift,
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
  const trust = usual ** 2 / (usual ** 2 + variance);
  const odds =
    oddsBefore * Math.sqrt(1 - trust) * (1 + seen ** 2 / variance / freedom) ** ((trust * (freedom + 1)) / 2);
  const share = trust * seen;
  const likelihood = Number.isFinite(odds) ? odds / (1 + odds) : 1;
  // a beam that is no Gaussian looks like a drift as well: the fit stays the plain one, and what it may be off is counted
  const off = Math.sqrt(likelihood * (trust * variance + share ** 2));
  return {
    share,
    likelihood,
    doubtOf: (slopes) =>
      off * Math.abs(slopes.reduce((sum, slope, j) => sum + slope * along.coefficients[j]!, 0)),
  };
}
