import { type LeastSquares, leastSquares } from '@coreward/optics';
import { digitDoubt } from '../over-kinds.ts';
import { alongSlopes, covarianceOf, scatterOf } from '../scatter.ts';
import { scaleDriftDoubt } from './scale-drift.ts';

/** d(z)² = waistDiameter² + fullDivergence²·(z − waistPosition)², fitted to diameters at several places. */
export interface CausticFit {
  /** Second-moment diameter at the waist, m; null where the parabola has no waist above zero. */
  readonly waist: {
    readonly waistDiameter: number;
    /** m, on the axis of the readings. */
    readonly waistPosition: number;
    /** Full angle, rad. */
    readonly fullDivergence: number;
    /** m. */
    readonly rayleighRange: number;
    /** Waist diameter times full divergence over 4, m·rad: the beam parameter product. */
    readonly parameterProduct: number;
  } | null;
  /** Standard uncertainties of the same, by the same names. */
  readonly doubts: NonNullable<CausticFit['waist']> | null;
  /**
   * Full divergence (rad) and where the beam seems to come from (m), with their standard uncertainties, where the
   * diameters have no waist above zero but do widen; null otherwise.
   */
  readonly cone: {
    readonly fullDivergence: number;
    readonly source: number;
    readonly divergenceDoubt: number;
    readonly sourceDoubt: number;
  } | null;
  /** Standard uncertainty of the waist's position, m, by a scale of the diameters that may have drifted while they were read. */
  readonly driftDoubt: number;
  readonly freedom: number;
  /** Degrees of freedom of the doubts: fewer where the kind of scatter had to be learnt from the readings, too. */
  readonly doubtFreedom: number;
  /** Scatter of one diameter, as a share of it. */
  readonly scatter: number;
  /** Diameters of the fitted curve at the readings' places, m; NaN where it has none. */
  readonly curve: readonly number[];
}

/**
 * The hyperbola that fits diameters best, each diameter trusted to the same share of itself: least squares of
 * (d² − model)/d², or, where the diameters scatter by more than 4.5 %, of (d² − model)/model; where they clearly scatter by
 * one length, of (d² − model)/d. Exact for any beam whose second moments were measured, whatever its M².
 *
 * @param z m, where the diameters were read; three different places or more
 * @param diameters m, second-moment (4σ), above zero
 * @param relative standard uncertainty of one diameter as a share; used where there are no more readings than unknowns
 * @returns null where the places do not tell the three unknowns apart
 * @source ISO 11146-1:2021, clause 9: z₀ = −b/2c, d₀ = √(4ac − b²)/(2√c), M² = π√(4ac − b²)/(8λ) (from memory)
 */
export function fitCaustic(
  z: readonly number[],
  diameters: readonly number[],
  relative: number,
): CausticFit | null {
  const middle = z.reduce((sum, at) => sum + at, 0) / z.length;
  // about the middle of the readings, or a waist far from z = 0 would cost digits
  const t = z.map((at) => at - middle);
  const byReading = weighted(t, diameters, diameters);
  if (byReading === null) return null;
  const freedom = z.length - 3;
  const spread = freedom > 0 ? Math.sqrt(byReading.squares / freedom) / 2 : 0;
  const byLength = scatterByLength(byReading, t, diameters) ? evenlyTrusted(byReading, t, diameters) : null;
  const fit = byLength ?? (spread > muchScatter ? byCurve(byReading, t, diameters) : byReading);
  const [a, b, c] = fit.coefficients as [number, number, number];
  const variance = freedom > 0 ? fit.squares / freedom : (2 * relative) ** 2;
  const curve = t.map((x) => Math.sqrt(a + b * x + c * x * x));
  const product = 4 * a * c - b * b;
  const scatter = Math.sqrt(variance) / 2;
  if (!(c > 0))
    return {
      waist: null,
      doubts: null,
      cone: null,
      driftDoubt: 0,
      freedom,
      doubtFreedom: freedom,
      scatter,
      curve,
    };
  const covariances =
    byLength === null
      ? covariancesOf(fit, t, spread > muchScatter ? curve : diameters, variance)
      : [fit.inverse.map((row) => row.map((x) => x * variance))];
  const doubtFreedom = byLength !== null || covariances.length > 1 ? freedom / 2 : freedom;
  const mean = diameters.reduce((sum, d) => sum + d, 0) / diameters.length;
  const asWeighted = byLength === null ? curve : curve.map((d) => Math.sqrt(d * mean));
  const scale = fit === byReading || asWeighted.some((d) => !(d > 0)) ? diameters : asWeighted;
  // a weighted square of a diameter moves by twice the diameter
  const columns = columnsOf(t, scale);
  const moves = diameters.map((d, i) => (2 * d) / scale[i]! ** 2);
  /**
   * Of what moves with the three coefficients by these slopes: the larger where two kinds of scatter are likely, and at
   * least what the last digit of the diameters leaves open.
   */
  const along = (slopes: readonly number[]): number =>
    Math.max(
      ...covariances.map((covariance) => alongSlopes(slopes, covariance)),
      freedom > 0 ? digitDoubt(slopes, fit.inverse, columns, diameters, moves) : 0,
    );
  const positionDoubt = along([0, -1 / (2 * c), b / (2 * c * c)]);
  const divergenceDoubt = along([0, 0, 1 / (2 * Math.sqrt(c))]);
  if (!(product > 0)) {
    const cone = {
      fullDivergence: Math.sqrt(c),
      source: middle - b / (2 * c),
      divergenceDoubt,
      sourceDoubt: positionDoubt,
    };
    return { waist: null, doubts: null, cone, driftDoubt: 0, freedom, doubtFreedom, scatter, curve };
  }
  const root = Math.sqrt(product);
  const [waistDiameter, fullDivergence] = [root / (2 * Math.sqrt(c)), Math.sqrt(c)];
  const waist = {
    waistDiameter,
    waistPosition: middle - b / (2 * c),
    fullDivergence,
    rayleighRange: waistDiameter / fullDivergence,
    parameterProduct: root / 8,
  };
  // d₀² = a − b²/4c; z_R = √(a/c − b²/4c²)
  const square = (slopes: readonly number[], of: number): number => along(slopes) / (2 * of);
  const doubts = {
    waistDiameter: square([1, -b / (2 * c), (b * b) / (4 * c * c)], waistDiameter),
    waistPosition: positionDoubt,
    fullDivergence: divergenceDoubt,
    rayleighRange: square(
      [1 / c, -b / (2 * c * c), -a / (c * c) + (b * b) / (2 * c ** 3)],
      waist.rayleighRange,
    ),
    parameterProduct: along([(4 * c) / (2 * root), -b / root, (4 * a) / (2 * root)]) / 8,
  };
  const isFar = z.some((at) => Math.abs(at - waist.waistPosition) >= 2 * waist.rayleighRange);
  const squares = curve.map((d, i) => (d / scale[i]!) ** 2);
  const driftDoubt = isFar ? scaleDriftDoubt(fit, columns, squares) : 0;
  return { waist, doubts, cone: null, driftDoubt, freedom, doubtFreedom, scatter, curve };
}

/** Whether diameters clearly scatter by the same length everywhere, and not by a share of themselves. */
const scatterByLength = (
  { residuals }: LeastSquares,
  t: readonly number[],
  diameters: readonly number[],
): boolean =>
  t.length > 3 &&
  scatterOf(
    residuals,
    columnsOf(t, diameters),
    [],
    diameters.map((d) => 1 / d),
  ).rule === 'rare';

/** The fit of diameters that are all good to one length: a squared diameter is then off by twice that times itself. */
function evenlyTrusted(
  start: LeastSquares,
  t: readonly number[],
  diameters: readonly number[],
): LeastSquares {
  const mean = diameters.reduce((sum, d) => sum + d, 0) / diameters.length;
  return byCurve(start, t, diameters, (d) => Math.sqrt(d * mean));
}

/**
 * Covariances of the three coefficients: for diameters that scatter by a share of themselves, and beside it, where what is
 * left over is likelier so, for such as scatter by the same length everywhere, as where a ruler or a pixel rules.
 */
function covariancesOf(
  { inverse, residuals }: LeastSquares,
  t: readonly number[],
  scale: readonly number[],
  variance: number,
): readonly (readonly (readonly number[])[])[] {
  const asShare = inverse.map((row) => row.map((x) => x * variance));
  if (t.length <= 3) return [asShare];
  const columns = columnsOf(t, scale);
  // residuals are shares: one length everywhere is a larger share where the beam is narrow
  const asLength = scale.map((d) => 1 / d);
  const scatter = scatterOf(residuals, columns, asLength);
  return scatter.rule === 'even' ? [asShare] : [asShare, covarianceOf(inverse, columns, scatter.variances)];
}

/** Above this scatter of one diameter, as a share, a diameter read too small would count too much by far. */
const muchScatter = 0.045;

/** Least squares of (d² − a − bt − ct²)/scale². */
function weighted(
  t: readonly number[],
  diameters: readonly number[],
  scale: readonly number[],
): LeastSquares | null {
  return leastSquares(
    columnsOf(t, scale),
    diameters.map((d, i) => (d / scale[i]!) ** 2),
  );
}

/** Columns of 1, t and t², each over scale². */
function columnsOf(t: readonly number[], scale: readonly number[]): readonly (readonly number[])[] {
  const weights = scale.map((d) => 1 / (d * d));
  return [weights, t.map((x, i) => x * weights[i]!), t.map((x, i) => x * x * weights[i]!)];
}

/** The same with each weight taken from the curve instead of the reading, until the curve stays; as it was where that fails. */
function byCurve(
  start: LeastSquares,
  t: readonly number[],
  diameters: readonly number[],
  scaleOf: (diameter: number) => number = (diameter) => diameter,
): LeastSquares {
  let fit = start;
  for (let turn = 0; turn < 8; turn++) {
    const [a, b, c] = fit.coefficients as [number, number, number];
    const curve = t.map((x) => a + b * x + c * x * x);
    if (!curve.every((square) => square > 0)) return start;
    const next =
      weighted(
        t,
        diameters,
        curve.map((square) => scaleOf(Math.sqrt(square))),
      ) ?? fit;
    const stays = next.coefficients.every(
      (x, j) => Math.abs(x - fit.coefficients[j]!) <= 1e-10 * Math.abs(x),
    );
    fit = next;
    if (stays) break;
  }
  return fit;
}
