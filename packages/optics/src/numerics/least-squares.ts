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
  const q = columns.map((column, j) => overLength(column, lengths[j]!));
  const rest = new Float64Array(values);
  // what is left of a unit column: rounding only
  const { r, projected, isWhole } = orthogonal(q, rest, 1e-11);
  if (!isWhole) return null;
  const back = inverseOfUpper(r);
  const coefficients = back.map((row, j) => dot(row, projected) / lengths[j]!);
  const inverse = back.map((row, i) => back.map((other, j) => dot(row, other) / (lengths[i]! * lengths[j]!)));
  return { coefficients, inverse, residuals: [...rest], squares: product(rest, rest) };
}

/** Columns and values in as many rows as there are columns. */
export interface Compressed {
  readonly columns: readonly (readonly number[])[];
  readonly values: readonly number[];
}

/**
 * The same least squares in as many rows as there are columns: the triangle R of the columns and the values' shares along
 * their orthogonal directions. Whatever coefficients c one takes, |values − columns·c|² of the two differ by one constant,
 * so a search that damps or weighs coefficients need not see the long columns again. Columns may say the same, or nothing.
 *
 * @param columns each as long as `values`
 * @source Å. Björck, BIT 7, 1 (1967), as above (from memory)
 */
export function compressed(columns: readonly (readonly number[])[], values: readonly number[]): Compressed {
  const lengths = columns.map(lengthOf);
  const q = columns.map((column, j) => overLength(column, lengths[j]! || 1));
  const { r, projected } = orthogonal(q, new Float64Array(values), 1e-14);
  return {
    columns: columns.map((_, j) => r.map((row) => row[j]! * lengths[j]!)),
    values: projected,
  };
}

/**
 * Orthogonal unit columns that span what the given ones do, fewer where those say the same; every fit by the ones is a fit
 * by the others.
 *
 * @param columns all of one length
 * @source as above
 */
export function orthonormal(columns: readonly (readonly number[])[]): readonly Float64Array[] {
  const q = columns.map((column) => overLength(column, lengthOf(column) || 1));
  const { r } = orthogonal(q, new Float64Array(columns[0]?.length ?? 0), 1e-11);
  return q.filter((_, k) => r[k]![k]! > 0);
}

interface Orthogonal {
  /** Upper triangle: column j is the sum of `r[k][j]` times direction k. */
  readonly r: number[][];
  readonly projected: number[];
  /** Whether every column had a direction of its own. */
  readonly isWhole: boolean;
}

/** Makes unit columns orthogonal in place, and takes their directions out of `rest`. */
function orthogonal(q: readonly Float64Array[], rest: Float64Array, least: number): Orthogonal {
  const n = q.length;
  const r: number[][] = q.map(() => new Array<number>(n).fill(0));
  const projected = new Array<number>(n).fill(0);
  let isWhole = true;
  for (let k = 0; k < n; k++) {
    const unit = q[k]!;
    const length = Math.sqrt(product(unit, unit));
    if (!(length > least)) {
      isWhole = false;
      continue;
    }
    r[k]![k] = length;
    for (let i = 0; i < unit.length; i++) unit[i] = unit[i]! / length;
    for (let j = k + 1; j < n; j++) r[k]![j] = removeFrom(q[j]!, unit);
    projected[k] = removeFrom(rest, unit);
  }
  return { r, projected, isWhole };
}

function overLength(column: readonly number[], length: number): Float64Array {
  const unit = new Float64Array(column.length);
  for (let i = 0; i < column.length; i++) unit[i] = column[i]! / length;
  return unit;
}

/** Takes the share along the unit vector out of `vector`, and says how much it was. */
function removeFrom(vector: Float64Array, unit: Float64Array): number {
  const share = product(vector, unit);
  for (let i = 0; i < vector.length; i++) vector[i] = vector[i]! - share * unit[i]!;
  return share;
}

/** As `Math.hypot(...vector)`, whose ten thousand arguments take longer than the rest together. */
function lengthOf(vector: readonly number[]): number {
  const plain = dot(vector, vector);
  if (plain > 1e-280 && plain < 1e280) return Math.sqrt(plain);
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

/** The same for the long columns; one function for both would be slow for either. */
function product(a: Float64Array, b: Float64Array): number {
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
