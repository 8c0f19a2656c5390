import { OutOfRange } from '../out-of-range.ts';

/** The coefficients whose sum of columns comes nearest to the values. */
export interface LeastSquares {
  readonly coefficients: readonly number[];
  /** (AᵀA)⁻¹: times the variance of one value it is the covariance of the coefficients. */
  readonly inverse: readonly (readonly number[])[];
  /** Values minus the sum of the columns. */
  readonly residuals: readonly number[];
  /** Sum of the squared residuals. */
  readonly squares: number;
}

/**
 * Linear least squares: coefficients cⱼ that make Σᵢ(valueᵢ − Σⱼ cⱼ·columnⱼᵢ)² smallest. Columns are scaled to one length
 * and made orthogonal one after the other, the values last; so a column of metres may stand beside one of square metres.
 *
 * @param columns each as long as `values`; fewer columns than values, or as many
 * @returns null where the columns do not differ enough for the values to tell them apart
 * @throws {OutOfRange} if the lengths do not fit
 * @source modified Gram-Schmidt with the right-hand side as last column: Å. Björck, BIT 7, 1 (1967) (from memory)
 */
export function leastSquares(
  columns: readonly (readonly number[])[],
  values: readonly number[],
): LeastSquares | null {
  const n = columns.length;
  if (columns.some((column) => column.length !== values.length) || values.length < n) {
    throw new OutOfRange({
      where: 'leastSquares',
      what: `${n} columns do not go with ${values.length} values`,
      mend: 'Give columns as long as the values, and no more columns than values.',
    });
  }
  const lengths = columns.map(lengthOf);
  if (lengths.some((length) => !(length > 0 && Number.isFinite(length)))) return null;
  const q = columns.map((column, j) => column.map((x) => x / lengths[j]!));
  const rest = [...values];
  const r: number[][] = q.map(() => new Array<number>(n).fill(0));
  const projected = new Array<number>(n).fill(0);
  for (let k = 0; k < n; k++) {
    const length = lengthOf(q[k]!);
    if (!(length > 1e-11)) return null; // what is left of a unit column: rounding only
    r[k]![k] = length;
    q[k] = q[k]!.map((x) => x / length);
    for (let j = k + 1; j < n; j++) r[k]![j] = removeFrom(q[j]!, q[k]!);
    projected[k] = removeFrom(rest, q[k]!);
  }
  const back = inverseOfUpper(r);
  const coefficients = back.map((row, j) => dot(row, projected) / lengths[j]!);
  const inverse = back.map((row, i) => back.map((other, j) => dot(row, other) / (lengths[i]! * lengths[j]!)));
  return { coefficients, inverse, residuals: rest, squares: dot(rest, rest) };
}

/** Takes the share along the unit vector out of `vector`, and says how much it was. */
function removeFrom(vector: number[], unit: readonly number[]): number {
  const share = dot(vector, unit);
  for (let i = 0; i < vector.length; i++) vector[i] = vector[i]! - share * unit[i]!;
  return share;
}

/** As `Math.hypot(...vector)`, whose ten thousand arguments take longer than the rest together. */
function lengthOf(vector: readonly number[]): number {
  let largest = 0;
  for (const x of vector) if (!(Math.abs(x) <= largest)) largest = Math.abs(x);
  if (!(largest > 0 && largest < Number.POSITIVE_INFINITY)) return largest;
  let sum = 0;
  for (const x of vector) sum += (x / largest) ** 2;
  return largest * Math.sqrt(sum);
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

function inverseOfUpper(r: readonly (readonly number[])[]): number[][] {
  const n = r.length;
  const inverse = r.map(() => new Array<number>(n).fill(0));
  for (let j = 0; j < n; j++) {
    inverse[j]![j] = 1 / r[j]![j]!;
    for (let i = j - 1; i >= 0; i--) {
      let sum = 0;
      for (let k = i + 1; k <= j; k++) sum += r[i]![k]! * inverse[k]![j]!;
      inverse[i]![j] = -sum / r[i]![i]!;
    }
  }
  return inverse;
}
