import { OutOfRange } from '../out-of-range.ts';
import { type Compressed, compressed, leastSquares } from './least-squares.ts';

/** Why a fit stopped. */
export type FitEnd =
  /** The next step was too short to matter. */
  | 'settled'
  /** No step made it better, however short: the best there is to rounding. */
  | 'no better'
  /** The turns were spent first; the parameters are the best so far. */
  | 'turns spent'
  /** The values do not tell the parameters apart. */
  | 'undecided';

/** Where a fit stopped and why. */
export interface Fit {
  readonly parameters: readonly number[];
  readonly residuals: readonly number[];
  /** Sum of the squared residuals. */
  readonly squares: number;
  /** (JᵀJ)⁻¹ there: times the variance of one residual it is the covariance of the parameters; null where undecided. */
  readonly inverse: readonly (readonly number[])[] | null;
  readonly end: FitEnd;
  readonly turns: number;
}

/** When a fit gives up. */
export interface FitLimits {
  /** Steps tried at most. */
  readonly turns: number;
  /** A step shorter than this share of the scales ends the search. */
  readonly step: number;
}

/** Columns of ∂residual/∂parameter at given parameters. */
export type SlopesOf = (parameters: readonly number[]) => readonly (readonly number[])[];

/** Limits that end fits of smooth formulas at the precision of doubles. */
export const usualFitLimits: FitLimits = { turns: 200, step: 1e-10 };

/**
 * Parameters that make the sum of the squared residuals smallest, from a first guess near enough to lie in the same
 * valley. Slopes are central differences, one thousandth of a scale wide to either side, unless they are given.
 *
 * @param residuals of given parameters; always as many, and no fewer than parameters
 * @param scales by how much each parameter must change to matter, in its own unit; above zero
 * @param slopesOf exact slopes, where there is a formula for them
 * @throws {OutOfRange} if a scale is not above zero, or the residuals of the first guess are not finite
 * @source D. W. Marquardt, J. SIAM 11, 431 (1963) (from memory); damping by a tenth and ten
 */
export function levenbergMarquardt(
  residuals: (parameters: readonly number[]) => readonly number[],
  guess: readonly number[],
  scales: readonly number[],
  limits: FitLimits = usualFitLimits,
  slopesOf: SlopesOf | null = null,
): Fit {
  let parameters = [...guess];
  let now = residuals(parameters);
  let squares = sumOfSquares(now);
  if (scales.length !== guess.length || scales.some((scale) => !(scale > 0)) || !Number.isFinite(squares)) {
    throw new OutOfRange({
      where: 'levenbergMarquardt',
      what: 'the first guess has no finite residuals, or a parameter no scale above zero',
      mend: 'Start where the formula has a value, with one scale above zero for each parameter.',
    });
  }
  let damping = 1e-3;
  let end: FitEnd = 'turns spent';
  let turns = 0;
  // as many rows as parameters: what the damping tries is cheap, however many values there are
  const hereabouts = (): Compressed => {
    if (slopesOf === null) return compressed(slopesAt(residuals, parameters, scales), now);
    const { columns, values } = compressed(slopesOf(parameters), now);
    return { columns: columns.map((column, j) => column.map((slope) => slope * scales[j]!)), values };
  };
  let here = hereabouts();
  while (turns < limits.turns) {
    turns += 1;
    const step = dampedStep(here, damping);
    if (step === null) {
      end = 'undecided';
      break;
    }
    const tried = parameters.map((value, j) => value + step[j]! * scales[j]!);
    const then = residuals(tried);
    const sum = sumOfSquares(then);
    const isShort = Math.max(...step.map(Math.abs)) < limits.step;
    if (sum <= squares) {
      const gain = squares - sum;
      parameters = tried;
      now = then;
      squares = sum;
      damping = Math.max(damping / 10, 1e-12);
      here = hereabouts();
      if (isShort || (gain <= 1e-15 * squares && damping < 1e-6)) {
        end = 'settled';
        break;
      }
    } else if (isShort || damping > 1e12) {
      end = 'no better';
      break;
    } else damping *= 10;
  }
  const inverse = leastSquares(here.columns, here.values)?.inverse ?? null;
  return {
    parameters,
    residuals: now,
    squares,
    inverse: inverse?.map((row, i) => row.map((x, j) => x * scales[i]! * scales[j]!)) ?? null,
    end: inverse === null ? 'undecided' : end,
    turns,
  };
}

/** The step in units of the scales that leads to the lowest point of the damped quadratic. */
function dampedStep(
  { columns: slopes, values: residuals }: Compressed,
  damping: number,
): readonly number[] | null {
  const sizes = slopes.map((column) => Math.sqrt(sumOfSquares(column)));
  const columns = slopes.map((column, j) => [
    ...column,
    // an idle parameter would have no size: it keeps its place
    ...sizes.map((size, i) => (i === j ? Math.sqrt(damping) * (size || 1) : 0)),
  ]);
  const target = [...residuals.map((residual) => -residual), ...sizes.map(() => 0)];
  return leastSquares(columns, target)?.coefficients ?? null;
}

/** Columns of ∂residual/∂(parameter/scale). */
function slopesAt(
  residuals: (parameters: readonly number[]) => readonly number[],
  at: readonly number[],
  scales: readonly number[],
): readonly (readonly number[])[] {
  const share = 1e-3;
  return at.map((value, j) => {
    const above = residuals(at.with(j, value + share * scales[j]!));
    const below = residuals(at.with(j, value - share * scales[j]!));
    return above.map((residual, i) => (residual - below[i]!) / (2 * share));
  });
}

function sumOfSquares(residuals: readonly number[]): number {
  let sum = 0;
  for (const residual of residuals) sum += residual * residual;
  return sum;
}
