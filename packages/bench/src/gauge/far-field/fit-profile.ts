import { median } from '@coreward/optics';
import { alongSlopes, covarianceOf, scatterOf, variancesOverKinds } from '../scatter.ts';
import { darkUnder, type Rough } from './dark-under.ts';
import { crossing, evenCurveAt, evenCurveSlopes } from './even-curve.ts';
import { outTo } from './out-to.ts';
import { tailDoubt, tailShare } from './tail-share.ts';
import { layTerms } from './terms.ts';

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

/** More readings than twice this are laid together to so many means of neighbours, which know as much of so smooth a curve. */
const enough = 500;

/**
 * Lays an even curve through the readings, as many terms as they can bear. No shape of far field is presumed but that it is
 * even, and how its tail goes on into the dark.
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
  const x = kept.map((i) => sines[i]!);
  const y = kept.map((i) => intensities[i]! - dark);
  const unit = 2 * rough.halfWidth;
  const laid = layTerms({ x, y, unit, peak: rough.peak - dark, centre: rough.centre });
  if (laid === null) return null;
  const { fit, scales } = laid;
  const freedom = x.length - fit.parameters.length;
  if (fit.inverse === null || freedom < 1) return null;
  const p = fit.parameters;
  const curve = x.map((sine) => evenCurveAt(p, sine, unit));
  const columns = evenCurveSlopes(x, p, unit);
  const variances = variancesOverKinds(scatterOf(fit.residuals, columns, curve));
  const covariance = covarianceOf(fit.inverse, columns, variances);
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
      // how steeply the light falls there
      const step = 0.001 * value * unit;
      const at = p[1]! + value * unit;
      const slope = (evenCurveAt(p, at, unit) - evenCurveAt(p, at + step, unit)) / step;
      const byDark = ((1 - share) * darkDoubt) / slope;
      return { value: value * unit, uncertainty: Math.hypot(alongSlopes(slopes, covariance), byDark) };
    },
  };
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
