import { medianDeviation } from '@coreward/optics';
import type { Rough } from './dark-under.ts';

/** Readings below this share of the peak are left out: there side lobes begin, which no smooth curve follows. */
const lowest = 0.025;

/** How far from the centre the readings stay above the lowest share: up to where a stretch of them is below it. */
export function outTo(
  sines: readonly number[],
  intensities: readonly number[],
  { centre, peak }: Rough,
  dark: number,
): number {
  const order = sines
    .map((_, i) => i)
    .sort((a, b) => Math.abs(sines[a]! - centre) - Math.abs(sines[b]! - centre));
  const limit = lowest * (peak - dark);
  // the mean of a stretch: noise alone must not take it below, or the fit would end where readings are low by chance
  const differences = order
    .slice(2)
    .map((i, k) => intensities[i]! - 2 * intensities[order[k + 1]!]! + intensities[order[k]!]!);
  const noise = medianDeviation(differences) / Math.sqrt(6);
  const stretch = Math.max(4, Math.min(Math.ceil(((2 * noise) / limit) ** 2), order.length >> 2));
  for (let end = stretch; end <= order.length; end++) {
    const mean =
      order.slice(end - stretch, end).reduce((sum, i) => sum + intensities[i]! - dark, 0) / stretch;
    if (mean < limit) return Math.abs(sines[order[end - 1]!]! - centre);
  }
  return Number.POSITIVE_INFINITY;
}
