/**
 * Σ c_k T_k(t), a Chebyshev series, summed by Clenshaw's recurrence.
 *
 * @param coefficients the first one counts whole, not halved
 * @param t within −1 … 1; not checked, for this is called millions of times
 * @source C. W. Clenshaw, Math. Tables Aids Comput. 9, 118 (1955) (from memory)
 */
export function chebyshevSeries(coefficients: readonly number[], t: number): number {
  const twice = 2 * t;
  let next = 0;
  let afterNext = 0;
  for (let k = coefficients.length - 1; k > 0; k--) {
    const sum = coefficients[k]! + twice * next - afterNext;
    afterNext = next;
    next = sum;
  }
  return coefficients[0]! + t * next - afterNext;
}
