/** Signs that something else than aim is wrong, told from readings alone. Light is ln of what was read, floor left out. */

/** Readings of one screw that is swept again and again, nothing else turned in between. */
export interface Repeats {
  /** Highest of each sweep. */
  readonly highest: readonly number[];
  /** What stood after each, the hand off the knob. */
  readonly standing: readonly number[];
}

/** A peak that went one way so often, and so far (ln) in all, has not done so by its noise. @source our choice: one chance in 24 for an order of four, and some deviations of a reading besides */
const driftCount = 4;
const driftLeast = 0.06;

/** How far (ln) peaks have gone one way while they should be alike; null: they did not. */
export function driftOf(highest: readonly number[]): number | null {
  const steps = highest.slice(1).map((ln, i) => ln - highest[i]!);
  if (highest.length < driftCount || !steps.every((step) => step * steps[0]! > 0)) return null;
  const all = highest.at(-1)! - highest[0]!;
  return Math.abs(all) > driftLeast ? all : null;
}

/** From so many repeats on, and above this scatter (1σ of ln), the hand is the limit. @source 5 % of repeat to repeat: our choice */
const scatterCount = 3;
const scatterLeast = 0.05;

/** Scatter of what stands after sweeps that should all end alike, 1σ; null: it is no more than readings have. */
export function scatterOf({ standing }: Repeats): number | null {
  if (standing.length < scatterCount) return null;
  const scatter = scatterWithin([standing]);
  return scatter > scatterLeast ? scatter : null;
}

/** Standard deviation of values about the mean of their own row, of all rows together; 0 where no row has two. */
function scatterWithin(rows: readonly (readonly number[])[]): number {
  const told = rows.filter(({ length }) => length > 1);
  const free = told.reduce((sum, { length }) => sum + length - 1, 0);
  const square = told.reduce((sum, row) => {
    const mean = row.reduce((all, ln) => all + ln, 0) / row.length;
    return sum + row.reduce((all, ln) => all + (ln - mean) ** 2, 0);
  }, 0);
  return free === 0 ? 0 : Math.sqrt(square / free);
}

/**
 * Peaks of one screw that scatter by more (1σ of ln) are read by a noisier meter than a claim counts with.
 *
 * @source twice what noise of 2 % makes of a highest reading, 0.7 of it: our choice, on benches drawn with seeds 40000 to 40199,
 *   where it withholds 4 of 100 claims; with noise of 5 % it withholds three of four that were wrong
 */
const peaksLeast = 0.028;

/** Scatter of peaks that should be alike, 1σ, of several screws together; null: it is no more than a claim counts with. */
export function scatterOfPeaks(repeats: readonly (readonly number[])[]): number | null {
  const scatter = scatterWithin(repeats);
  return scatter > peaksLeast ? scatter : null;
}

/** After so many tries none of which stood nearer than this (ln). @source 3 %: our choice */
const belowCount = 4;
const belowLeast = 0.03;

/** Least that stood below its highest in several tries (ln); null: one of them came near enough. */
export function alwaysBelow({ highest, standing }: Repeats): number | null {
  if (standing.length < belowCount) return null;
  const least = Math.min(...standing.map((ln, i) => highest[i]! - ln));
  return least > belowLeast ? least : null;
}

/** A walk whose last peak is below this of its highest has lost what it had. @source our choice: five deviations of a 3 % reading */
const lostBelow = 0.85;

/** The last peak over the highest of the walk, where light that was there is lost; null: it is not. */
export function shareOfBest({
  peak,
  best,
}: {
  readonly peak: number | null;
  readonly best: number | null;
}): number | null {
  if (peak === null || best === null || peak >= lostBelow * best) return null;
  return peak / best;
}

/** Peaks that are alike to within this (ln), after M1 has been turned so often and so far, do not tell where M1 stands. @source our choice: a range of noise of some readings */
const flatCount = 5;
const flatSpread = 0.08;

/** Whether the peak does not depend on M1: a plateau of many modes, cladding light, or a meter that sees something else. */
export const isFlat = (peaks: readonly number[]): boolean =>
  peaks.length > flatCount && Math.max(...peaks) - Math.min(...peaks) < flatSpread;
