/** A Hermitian matrix A ≈ L L†, column by column: column a at a·size. */
export interface LowRank {
  readonly rank: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Σ|L|² of each column: its share of the trace. Columns come in falling order of what was left on the diagonal. */
  readonly weights: readonly number[];
}

/**
 * Few columns for a Hermitian matrix without negative eigenvalues, or null where more than `most` are needed until less than
 * `leftOut` of its trace is left out.
 *
 * @param re size × size, row by row
 * @source the Cholesky decomposition with pivots, standard numerical practice (from memory)
 */
export function lowRank(
  re: Float64Array,
  im: Float64Array,
  size: number,
  leftOut: number,
  most: number,
): LowRank | null {
  const diagonal = Float64Array.from({ length: size }, (_, i) => re[i * size + i]!);
  const trace = diagonal.reduce((sum, d) => sum + d, 0);
  const columnsRe = new Float64Array(most * size);
  const columnsIm = new Float64Array(most * size);
  const weights: number[] = [];
  for (let rank = 0; ; rank += 1) {
    let left = 0;
    let pivot = 0;
    for (let i = 0; i < size; i += 1) {
      left += Math.max(0, diagonal[i]!);
      if (diagonal[i]! > diagonal[pivot]!) pivot = i;
    }
    if (left <= leftOut * trace) {
      return { rank, re: columnsRe.slice(0, rank * size), im: columnsIm.slice(0, rank * size), weights };
    }
    if (rank === most) return null;
    const at = rank * size;
    const scale = 1 / Math.sqrt(diagonal[pivot]!);
    let weight = 0;
    for (let i = 0; i < size; i += 1) {
      let sumRe = re[i * size + pivot]!;
      let sumIm = im[i * size + pivot]!;
      for (let a = 0; a < rank; a += 1) {
        const iRe = columnsRe[a * size + i]!;
        const iIm = columnsIm[a * size + i]!;
        const pRe = columnsRe[a * size + pivot]!;
        const pIm = columnsIm[a * size + pivot]!;
        sumRe -= iRe * pRe + iIm * pIm;
        sumIm -= iIm * pRe - iRe * pIm;
      }
      const lRe = sumRe * scale;
      const lIm = sumIm * scale;
      columnsRe[at + i] = lRe;
      columnsIm[at + i] = lIm;
      const size2 = lRe * lRe + lIm * lIm;
      diagonal[i] = diagonal[i]! - size2;
      weight += size2;
    }
    diagonal[pivot] = 0;
    weights.push(weight);
  }
}
