import { brentRoot, levenbergMarquardt, median, medianDeviation, usualFitLimits } from '@coreward/optics';
import { alongSlopes, covarianceOf, scatterOf } from '../scatter.ts';
import { darkUnder, type Rough } from './dark-under.ts';
import { tailDoubt, tailShare } from './tail-share.ts';

/** A far field as a smooth, even curve about its centre. */
export interface ProfileFit {
  /** sin θ at the centre, on the scale of the readings. */
  readonly centre: number;
  readonly peak: number;
  readonly background: number;
  /** Standard uncertainty of the dark under the curve, as a share of the peak. */
  readonly darkDoubt: number;
  readonly freedom: number;
  /** sin θ from the centre to where the curve falls to this share of its peak, with its standard uncertainty; null where the readings end before. */
  readonly sineAt: (share: number) => { readonly value: number; readonly uncertainty: number } | null;
  /** The same without its uncertainty. */
  readonly distanceAt: (share: number) => number | null;
  readonly x: readonly number[];
  readonly readings: readonly number[];
  readonly curve: readonly number[];
}

/** Readings below this share of the peak are left out: there side lobes begin, which no smooth curve follows. */
const lowest = 0.025;

/** More readings than twice this are laid together to so many means of neighbours, which know as much of so smooth a curve. */
const enough = 1000;

/**
 * Lays intensity = peak·exp(−k₁u² − k₂u⁴ − …) through the readings, u the distance from the centre in half widths; as
 * many terms as the readings can bear, five at most. No shape of far field is presumed but that it is even, and how its
 * tail goes on into the dark.
 *
 * @param sines sin θ of each reading
 * @param background stated; null: from the outermost readings, as far as they tell
 * @returns null where the readings show no peak with two sides
 */
export function fitProfile(
  sines: readonly number[],
  intensities: readonly number[],
  background: number | null,
): ProfileFit | null {
  if (sines.length > 2 * enough) {
    const together = Math.ceil(sines.length / enough);
    const order = sines.map((_, i) => i).sort((a, b) => sines[a]! - sines[b]!);
    return fitProfile(means(sines, order, together), means(intensities, order, together), background);
  }
  const rough = roughly(sines, intensities);
  if (rough === null) return null;
  const { dark, doubt, wings } = darkUnder(sines, intensities, background, rough);
  const fit = layCurve(sines, intensities, rough, dark, doubt);
  if (fit === null || wings.length === 0) return fit;
  const tail = fit.peak * tailShare(fit.distanceAt, wings);
  return layCurve(sines, intensities, rough, dark - tail, Math.hypot(doubt, tailDoubt * tail));
}

/** Means of so many values that follow each other in an order; what is left over at its end is left out. */
function means(values: readonly number[], order: readonly number[], together: number): number[] {
  return Array.from({ length: Math.floor(order.length / together) }, (_, k) => {
    let sum = 0;
    for (let i = k * together; i < (k + 1) * together; i++) sum += values[order[i]!]!;
    return sum / together;
  });
}

function layCurve(
  sines: readonly number[],
  intensities: readonly number[],
  rough: Rough,
  dark: number,
  darkDoubt: number,
): ProfileFit | null {
  const reach = outTo(sines, intensities, rough, dark);
  const kept = sines.map((_, i) => i).filter((i) => Math.abs(sines[i]! - rough.centre) <= reach);
  const most = Math.min(5, Math.floor((kept.length - 3) / 2));
  const x = kept.map((i) => sines[i]!);
  const y = kept.map((i) => intensities[i]! - dark);
  const unit = 2 * rough.halfWidth;
  const at = (p: readonly number[], sine: number): number =>
    p[0]! * Math.exp(-exponent(p, (sine - p[1]!) / unit));
  const residuals = (p: readonly number[]): readonly number[] => x.map((sine, i) => at(p, sine) - y[i]!);
  const slopesOf = (p: readonly number[]): readonly (readonly number[])[] => profileSlopes(x, p, unit);
  const scalesOf = (terms: number) => [rough.peak, unit / 4, 1, ...new Array<number>(terms - 1).fill(0.3)];
  const fits = Array.from({ length: Math.max(0, most) }, (_, k) => {
    // a Gaussian falls to a half in half a unit: k₁ = 4 ln 2
    const guess = [rough.peak - dark, rough.centre, 4 * Math.LN2, ...new Array<number>(k).fill(0)];
    return levenbergMarquardt(residuals, guess, scalesOf(k + 1), usualFitLimits, slopesOf);
  }).filter(({ inverse, parameters }) => inverse !== null && parameters[0]! > 0);
  const fit =
    fits[
      fewestTerms(
        fits.map(({ squares, parameters }) => ({ squares, parameters: parameters.length })),
        x.length,
      )
    ];
  if (fit === undefined) return null;
  const scales = scalesOf(fit.parameters.length - 2);
  const freedom = x.length - fit.parameters.length;
  if (fit.inverse === null || freedom < 1) return null;
  const p = fit.parameters;
  const curve = x.map((sine) => at(p, sine));
  const columns = slopesOf(p);
  const covariance = covarianceOf(fit.inverse, columns, scatterOf(fit.residuals, columns, curve).variances);
  const farthest = Math.max(...x.map((sine) => Math.abs(sine - p[1]!))) / unit;
  return {
    centre: p[1]!,
    peak: p[0]!,
    background: dark,
    darkDoubt: darkDoubt / p[0]!,
    freedom,
    x,
    readings: y,
    curve,
    distanceAt: (share) => {
      const found = crossing(p, share, farthest);
      return found === null ? null : found * unit;
    },
    sineAt: (share) => {
      const value = crossing(p, share, farthest);
      if (value === null) return null;
      const slopes = p.map((parameter, j) => {
        const step = 1e-4 * scales[j]!;
        const above = crossing(p.with(j, parameter + step), share, farthest * 1.1);
        const below = crossing(p.with(j, parameter - step), share, farthest * 1.1);
        return above === null || below === null ? 0 : ((above - below) * unit) / (2 * step);
      });
      const slope = (Math.exp(-exponent(p, value)) - Math.exp(-exponent(p, value * 1.001))) / (value * 0.001);
      const byDark = ((1 - share) * darkDoubt * unit) / (p[0]! * slope);
      return { value: value * unit, uncertainty: Math.hypot(alongSlopes(slopes, covariance), byDark) };
    },
  };
}

/** Columns of ∂intensity/∂(peak, centre, k₁, k₂, …). @source elementary: the slopes of the curve above */
function profileSlopes(
  x: readonly number[],
  p: readonly number[],
  unit: number,
): readonly (readonly number[])[] {
  const columns = p.map(() => new Array<number>(x.length).fill(0));
  const [byPeak, byCentre] = columns as [number[], number[]];
  for (let i = 0; i < x.length; i++) {
    const u = (x[i]! - p[1]!) / unit;
    const height = Math.exp(-exponent(p, u));
    let power = 1;
    let steep = 0;
    for (let k = 2; k < p.length; k++) {
      // k₁u² + k₂u⁴ + …: the term of p[k] goes with u to the power 2(k − 1), and rises with one less
      steep += 2 * (k - 1) * p[k]! * power * u;
      power *= u * u;
      columns[k]![i] = -p[0]! * height * power;
    }
    byPeak[i] = height;
    byCentre[i] = (p[0]! * height * steep) / unit;
  }
  return columns;
}

const exponent = (p: readonly number[], u: number): number => {
  let sum = 0;
  for (let k = p.length - 1; k >= 2; k--) sum = (sum + p[k]!) * u * u;
  return sum;
};

/** Where exp(−exponent) falls to `share`, in units; null if not before `farthest`. */
function crossing(p: readonly number[], share: number, farthest: number): number | null {
  const height = (u: number): number => exponent(p, u) + Math.log(share);
  const steps = 200;
  for (let i = 1; i <= steps; i++) {
    const u = (farthest * i) / steps;
    if (height(u) >= 0) return brentRoot(height, u - farthest / steps, u);
  }
  return null;
}

/** Peak, middle and half width at half of the peak. */
function roughly(sines: readonly number[], intensities: readonly number[]): Rough | null {
  const order = sines.map((_, i) => i).sort((a, b) => sines[a]! - sines[b]!);
  const x = order.map((i) => sines[i]!);
  // a median of three: one stray reading is no peak
  const y = order.map((i, k) =>
    k === 0 || k === order.length - 1
      ? intensities[i]!
      : median([intensities[order[k - 1]!]!, intensities[i]!, intensities[order[k + 1]!]!]),
  );
  const peak = Math.max(...y);
  const base = Math.min(...y);
  const half = y.map((value) => value > base + (peak - base) / 2);
  const [first, last] = [half.indexOf(true), half.lastIndexOf(true)];
  if (!(peak > base) || first <= 0 || last >= x.length - 1) return null;
  const left = (x[first]! + x[first - 1]!) / 2;
  const right = (x[last]! + x[last + 1]!) / 2;
  return { centre: (left + right) / 2, halfWidth: (right - left) / 2, peak };
}

/** How far from the centre the readings stay above the lowest share: up to where a stretch of them is below it. */
function outTo(
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

/** How many terms more than the likeliest number are kept: what a further one would tell must stay below the noise. */
const spareTerms = 2;

/**
 * The fit to take of several with more terms each: the likeliest by what it leaves over and what its terms cost, and a
 * spare one.
 *
 * @source N. Sugiura, Commun. Stat. A 7, 13 (1978): Akaike's criterion for few readings (from memory)
 */
function fewestTerms(
  fits: readonly { readonly squares: number; readonly parameters: number }[],
  count: number,
): number {
  const cost = fits.map(({ squares, parameters: k }) =>
    count > k + 2
      ? count * Math.log(squares / count) + (2 * (k + 1) * count) / (count - k - 2)
      : Number.POSITIVE_INFINITY,
  );
  return Math.min(fits.length - 1, cost.indexOf(Math.min(...cost)) + spareTerms);
}
