/** The middle of the values, or half-way between the middle two; NaN of none. Strays at either end do not move it. */
export function median(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  if (sorted.length === 0) return Number.NaN;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/**
 * The scatter of values about their median, as the standard deviation of a normal law that has the same median of
 * distances. Up to half of the values may be strays.
 *
 * @source 1.4826 = 1/Φ⁻¹(3/4): F. R. Hampel, J. Amer. Statist. Assoc. 69, 383 (1974) (from memory)
 */
export function medianDeviation(values: ArrayLike<number>): number {
  const middle = median(values);
  return 1.4826 * median(Float64Array.from(values, (value) => Math.abs(value - middle)));
}
