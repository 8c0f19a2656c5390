import { median, medianDeviation } from '@coreward/optics';

/** Where a far field lies, before any curve is laid through it. */
export interface Rough {
  readonly centre: number;
  readonly halfWidth: number;
  readonly peak: number;
}

/** Light of a mode's side lobes that may lie in the wings, as a share of the peak (computed for V from 1.9 to 6). */
const sideLobes = 1.5e-4;

/** What a far field would read without light, in the unit of the readings. */
export interface DarkLevel {
  readonly dark: number;
  /** Standard uncertainty. */
  readonly doubt: number;
}

/** The dark under a far field: as stated, or from the outermost readings. */
export function darkUnder(
  sines: readonly number[],
  intensities: readonly number[],
  background: number | null,
  rough: Rough,
): DarkLevel {
  if (background !== null) return { dark: background, doubt: 0 };
  const wings = outermost(sines, intensities, rough);
  // the dark may be anything up to the lowest reading: nine times of ten within 1.645 of these
  if (wings.length === 0) return { dark: 0, doubt: Math.max(0, Math.min(...intensities)) / 1.645 };
  const dark = median(wings);
  const sorted = wings.toSorted((a, b) => a - b);
  // where the dark was cut at nought its lower half tells nothing: one deviation up lie 84 % of a normal law
  const upper = sorted[Math.round(0.84 * (sorted.length - 1))]! - dark;
  const isCut = wings.filter((reading) => reading === sorted[0]).length > 0.2 * wings.length;
  const spread = isCut ? Math.max(upper, medianDeviation(wings)) : medianDeviation(wings);
  // of a median: a quarter more than of a mean
  const byChance = (1.25 * spread) / Math.sqrt(wings.length);
  const half = wings.length >> 1;
  const [outer, inner] = [wings.slice(0, half), wings.slice(-half)];
  const still = median(inner) - median(outer);
  const ofHalves = (1.25 * Math.hypot(medianDeviation(inner), medianDeviation(outer))) / Math.sqrt(half);
  // what still falls outwards, by more than chance would have it, is the mode's own tail
  const tail = still > 0 ? 2 * Math.sqrt(Math.max(0, still ** 2 - 3 * ofHalves ** 2)) : 0;
  return { dark, doubt: Math.hypot(byChance, tail, sideLobes * (rough.peak - dark)) };
}

/**
 * The outer seventh of the readings, if it lies beyond three half widths: nearer in, the mode's own tail would be taken
 * for the dark.
 */
function outermost(
  sines: readonly number[],
  intensities: readonly number[],
  { centre, halfWidth }: Rough,
): readonly number[] {
  const order = sines
    .map((_, i) => i)
    .sort((a, b) => Math.abs(sines[b]! - centre) - Math.abs(sines[a]! - centre));
  const outer = order.slice(0, Math.floor(order.length / 7));
  const isFar = outer.every((i) => Math.abs(sines[i]! - centre) > 3 * halfWidth);
  return isFar && outer.length >= 4 ? outer.map((i) => intensities[i]!) : [];
}
