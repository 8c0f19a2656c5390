/** The middle of the values, or half-way between the middle two; NaN of none. Strays at either end do not move it. */
export function median(values: ArrayLike<number>): number {
  if (values.length === 0) return Number.NaN;
  // not `from`, which asks an iterator for each value
  const own = new Float64Array(values);
  const half = own.length >> 1;
  const upper = valueOfRank(own, half);
  if (own.length % 2 === 1) return upper;
  let lower = own[0]!;
  for (let i = 1; i < half; i++) if (own[i]! > lower) lower = own[i]!;
  return (lower + upper) / 2;
}

/**
 * The value that stands at a rank once all are in order; smaller ones are brought before it.
 *
 * @source C. A. R. Hoare, Commun. ACM 4, 321 (1961), algorithm 65: Find (from memory)
 */
function valueOfRank(values: Float64Array, rank: number): number {
  let [first, last] = [0, values.length - 1];
  while (first < last) {
    const pivot = values[(first + last) >> 1]!;
    let [i, j] = [first, last];
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i > j) break;
      const held = values[i]!;
      values[i++] = values[j]!;
      values[j--] = held;
    }
    if (rank <= j) last = j;
    else if (rank >= i) first = i;
    else break;
  }
  return values[rank]!;
}

/**
 * The scatter of values about their median, as the standard deviation of a normal law that has the same median of
 * distances. Up to half of the values may be strays.
 *
 * @source 1.4826 = 1/Φ⁻¹(3/4): F. R. Hampel, J. Amer. Statist. Assoc. 69, 383 (1974) (from memory)
 */
export function medianDeviation(values: ArrayLike<number>): number {
  const middle = median(values);
  const distances = new Float64Array(values);
  for (let i = 0; i < distances.length; i++) distances[i] = Math.abs(distances[i]! - middle);
  return 1.4826 * median(distances);
}
