/** Readings beyond which a fit begins with means of neighbours. */
const manyReadings = 2000;
const blocks = 400;

/**
 * Means of neighbours along x, some hundred of them: where the fit to very many readings had better begin. null where there
 * are few enough to begin with the readings themselves. Only a beginning: the answer is fitted to every reading.
 */
export function blockMeans(
  x: readonly number[],
  y: readonly number[],
): { readonly x: readonly number[]; readonly y: readonly number[] } | null {
  if (x.length <= manyReadings) return null;
  const order = Uint32Array.from(x, (_, i) => i).sort((a, b) => x[a]! - x[b]!);
  const sums = Array.from({ length: blocks }, () => ({ x: 0, y: 0, count: 0 }));
  for (let k = 0; k < order.length; k++) {
    const i = order[k]!;
    const sum = sums[Math.floor((k * blocks) / order.length)]!;
    sum.x += x[i]!;
    sum.y += y[i]!;
    sum.count += 1;
  }
  return { x: sums.map((sum) => sum.x / sum.count), y: sums.map((sum) => sum.y / sum.count) };
}
