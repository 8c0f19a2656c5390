import { erfc, levenbergMarquardt, usualFitLimits } from '@coreward/optics';
import { blockMeans } from '../block-means.ts';
import { positionDigit } from '../last-digit.ts';
import { type LightDrift, lightDrift } from '../light-drift.ts';
import { digitDoubt, doubtOverKinds } from '../over-kinds.ts';
import { covarianceOf, type Scatter, scatterOf } from '../scatter.ts';

/** A fit of one scan: P(x) = background + power/2·(1 + erf(√2(x − centre)/radius)). */
export interface EdgeFit {
  /** 1/e² radius of intensity along the scan, m. */
  readonly radius: number;
  /** Where half of the power is covered, m. */
  readonly centre: number;
  /** From one end of the scan to the other, in the unit of the readings; negative if the edge covers as x grows. */
  readonly power: number;
  readonly background: number;
  /** Of radius, centre, power, background. */
  readonly covariance: readonly (readonly number[])[];
  readonly freedom: number;
  readonly scatter: Scatter;
  /** Standard uncertainties over all kinds of scatter that the readings leave likely. */
  readonly doubts: { readonly radius: number; readonly centre: number };
  readonly drift: LightDrift | null;
  readonly curve: readonly number[];
}

/** Power past an edge, in the unit of `power`. @source elementary: the integral of a Gaussian */
export function powerPastEdge(
  x: number,
  { radius, centre, power, background }: Pick<EdgeFit, 'radius' | 'centre' | 'power' | 'background'>,
): number {
  return background + (power / 2) * erfc((-Math.SQRT2 * (x - centre)) / radius);
}

/**
 * Least squares of all four unknowns, every reading with the same weight.
 *
 * @param positions m, in any order; five or more, not all the same
 * @returns null where no curve of this kind fits the readings
 */
export function fitEdge(positions: readonly number[], readings: readonly number[]): EdgeFit | null {
  const means = blockMeans(positions, readings);
  const start = means === null ? null : fitEdge(means.x, means.y);
  const guess =
    start === null
      ? firstGuess(positions, readings)
      : [start.radius, start.centre, start.power, start.background];
  if (guess === null) return null;
  const shape = (p: readonly number[]): Pick<EdgeFit, 'radius' | 'centre' | 'power' | 'background'> => ({
    radius: p[0]!,
    centre: p[1]!,
    power: p[2]!,
    background: p[3]!,
  });
  const residuals = (p: readonly number[]): readonly number[] => {
    const edge = shape(p);
    return positions.map((x, i) => powerPastEdge(x, edge) - readings[i]!);
  };
  // ten thousand readings leave a doubt of 1e-5 of the radius at best
  const limits = start === null ? usualFitLimits : { ...usualFitLimits, step: 1e-8 };
  const size = Math.abs(guess[2]!);
  const scales = [guess[0]!, guess[0]!, size, size];
  const slopesOf = (p: readonly number[]): readonly (readonly number[])[] => edgeSlopes(positions, shape(p));
  const fit = levenbergMarquardt(residuals, guess, scales, limits, slopesOf);
  if (fit.inverse === null || !(fit.parameters[0]! > 0)) return null;
  const edge = shape(fit.parameters);
  const freedom = positions.length - 4;
  const curve = positions.map((x) => powerPastEdge(x, edge));
  const columns = edgeSlopes(positions, edge);
  const lit = curve.map((y) => y - Math.min(edge.background, edge.background + edge.power));
  const least = digitVariances(positions, columns[1]!);
  const scatterBy = (by: readonly (readonly number[])[]): Scatter =>
    scatterOf(
      fit.residuals,
      by,
      curve.map((y) => y - Math.min(0, edge.background)),
      columns[1],
      least,
    );
  const scatter = scatterBy(columns);
  const inverse = fit.inverse;
  const doubt = (slopes: readonly number[]): number =>
    Math.max(
      doubtOverKinds(slopes, inverse, columns, scatter, freedom),
      digitDoubt(slopes, inverse, columns, readings),
    );
  return {
    ...edge,
    covariance: covarianceOf(inverse, columns, scatter.variances),
    freedom,
    scatter,
    doubts: { radius: doubt([1, 0, 0, 0]), centre: doubt([0, 1, 0, 0]) },
    // a log of thousands is read in no time, in which no light drifts
    drift: means === null ? lightDrift(fit.residuals, columns, lit, scatterBy) : null,
    curve,
  };
}

/**
 * What the last digit of the positions leaves open of each reading: a position that is off moves it by the slope.
 *
 * @source even law from −½ to ½ of a step, JCGM 100:2008, F.2.2.1 (from memory)
 */
function digitVariances(positions: readonly number[], slopes: readonly number[]): readonly number[] {
  const place = positionDigit(positions) ** 2 / 12;
  return slopes.map((slope) => place * slope * slope);
}

/** Columns of ∂P/∂radius, ∂P/∂centre, ∂P/∂power and ∂P/∂background. @source elementary: erf′(u) = 2/√π·exp(−u²) */
function edgeSlopes(
  positions: readonly number[],
  { radius, centre, power }: Pick<EdgeFit, 'radius' | 'centre' | 'power'>,
): readonly (readonly number[])[] {
  const columns = [0, 1, 2, 3].map(() => new Array<number>(positions.length).fill(1));
  const [byRadius, byCentre, byPower] = columns as [number[], number[], number[]];
  for (let i = 0; i < positions.length; i++) {
    const u = (Math.SQRT2 * (positions[i]! - centre)) / radius;
    const bell = (-power / radius / Math.sqrt(Math.PI)) * Math.exp(-u * u);
    byRadius[i] = bell * u;
    byCentre[i] = bell * Math.SQRT2;
    byPower[i] = erfc(-u) / 2;
  }
  return columns;
}

/** Radius, centre, power and background from the outer readings and where the middle ones are crossed. */
function firstGuess(positions: readonly number[], readings: readonly number[]): readonly number[] | null {
  const order = positions.map((_, i) => i).sort((a, b) => positions[a]! - positions[b]!);
  const x = order.map((i) => positions[i]!);
  const y = order.map((i) => readings[i]!);
  const outer = Math.max(1, Math.floor(x.length / 8));
  const mean = (part: readonly number[]): number => part.reduce((sum, v) => sum + v, 0) / part.length;
  const first = mean(y.slice(0, outer));
  const last = mean(y.slice(-outer));
  const span = x.at(-1)! - x[0]!;
  if (!(span > 0) || first === last) return null;
  const share = y.map((value) => (value - first) / (last - first));
  // erf is ±0.6827 at one deviation: a radius (two deviations) lies between a sixth and five sixths of the power
  const at = (level: number): number => crossing(x, share, level);
  const radius = at(0.8413) - at(0.1587);
  return [radius > span / 200 ? radius : span / 20, at(0.5), last - first, first];
}

/** Half-way between the last crossing from below and the first one above: noise makes several. */
function crossing(x: readonly number[], share: readonly number[], level: number): number {
  const firstAbove = share.findIndex((s) => s >= level);
  const lastBelow = share.findLastIndex((s) => s < level);
  return (x[Math.max(0, firstAbove)]! + x[Math.max(0, lastBelow)]!) / 2;
}
