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
  /** Standard uncertainty, but for the light that the wings themselves may hold. */
  readonly doubt: number;
  /** Distances from the centre of the readings it was learnt from, sin θ; none where they lie too near. */
  readonly wings: readonly number[];
}

/** The dark under a far field: as stated, or from the outermost readings. */
export function darkUnder(
  sines: readonly number[],
  intensities: readonly number[],
  background: number | null,
  rough: Rough,
): DarkLevel {
  if (background !== null) return { dark: background, doubt: 0, wings: [] };
  const { isFar, order } = outermost(sines, rough);
  const wings = order.map((i) => intensities[i]!);
  // the dark may be anything from nought to the outermost readings: a third of that, and nine of ten reach both ends
  if (!isFar) {
    const most = median(wings);
    return {
      dark: most / 2,
      doubt: Math.hypot(most / 3, (1.25 * medianDeviation(wings)) / Math.sqrt(wings.length)),
      wings: [],
    };
  }
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
  return {
    dark,
    doubt: Math.hypot(byChance, tail, sideLobes * (rough.peak - dark)),
    wings: order.map((i) => Math.abs(sines[i]! - rough.centre)),
  };
}

/**
 * The outer seventh of the readings, farthest first, and whether it lies beyond three half widths: nearer in, the mode's
 * own tail is too much of it.
 */
function outermost(
  sines: readonly number[],
  { centre, halfWidth }: Rough,
): { readonly isFar: boolean; readonly order: readonly number[] } {
  const order = sines
    .map((_, i) => i)
    .sort((a, b) => Math.abs(sines[b]! - centre) - Math.abs(sines[a]! - centre));
  const outer = order.slice(0, Math.max(4, Math.floor(order.length / 7)));
  const isFar = order.length >= 28 && outer.every((i) => Math.abs(sines[i]! - centre) > 3 * halfWidth);
  return { isFar, order: outer };
}
