import { brentRoot, levenbergMarquardt, median, usualFitLimits } from '@coreward/optics';
import { alongSlopes, covarianceOf, scatterOf } from '../scatter.ts';
import { darkUnder, type Rough } from './dark-under.ts';

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
  readonly x: readonly number[];
  readonly readings: readonly number[];
  readonly curve: readonly number[];
}

/** Readings below this share of the peak are left out: there side lobes begin, which no smooth curve follows. */
const lowest = 0.025;

/**
 * Lays intensity = peak·exp(−k₁u² − k₂u⁴ − …) through the readings, u the distance from the centre in half widths; as
 * many terms as the readings can bear, five at most. No shape of far field is presumed but that it is even.
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
  const rough = roughly(sines, intensities);
  if (rough === null) return null;
  const { dark, doubt: darkDoubt } = darkUnder(sines, intensities, background, rough);
  const reach = outTo(sines, intensities, rough, dark);
  const kept = sines.map((_, i) => i).filter((i) => Math.abs(sines[i]! - rough.centre) <= reach);
  const terms = Math.min(5, Math.floor((kept.length - 3) / 2));
  if (terms < 1) return null;
  const x = kept.map((i) => sines[i]!);
  const y = kept.map((i) => intensities[i]! - dark);
  const unit = 2 * rough.halfWidth;
  const at = (p: readonly number[], sine: number): number =>
    p[0]! * Math.exp(-exponent(p, (sine - p[1]!) / unit));
  const residuals = (p: readonly number[]): readonly number[] => x.map((sine, i) => at(p, sine) - y[i]!);
  // a Gaussian falls to a half in half a unit: k₁ = 4 ln 2
  const guess = [rough.peak - dark, rough.centre, 4 * Math.LN2, ...new Array<number>(terms - 1).fill(0)];
  const scales = [rough.peak, unit / 4, 1, ...new Array<number>(terms - 1).fill(0.3)];
  const slopesOf = (p: readonly number[]): readonly (readonly number[])[] => profileSlopes(x, p, unit);
  const fit = levenbergMarquardt(residuals, guess, scales, usualFitLimits, slopesOf);
  const freedom = x.length - guess.length;
  if (fit.inverse === null || freedom < 1 || !(fit.parameters[0]! > 0)) return null;
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

/** How far from the centre the readings stay above the lowest share: up to where two on one side are below it. */
function outTo(
  sines: readonly number[],
  intensities: readonly number[],
  { centre, peak }: Rough,
  dark: number,
): number {
  const order = sines
    .map((_, i) => i)
    .sort((a, b) => Math.abs(sines[a]! - centre) - Math.abs(sines[b]! - centre));
  let below = 0;
  for (const i of order) {
    below = intensities[i]! - dark < lowest * (peak - dark) ? below + 1 : 0;
    if (below === 4) return Math.abs(sines[i]! - centre);
  }
  return Number.POSITIVE_INFINITY;
}
