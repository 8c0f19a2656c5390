import { type Fit, levenbergMarquardt, usualFitLimits } from '@coreward/optics';
import { evenCurveAt, evenCurveSlopes } from './even-curve.ts';

/** What a curve is laid through, and where the search for it begins. */
export interface Laying {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** In which distances from the centre are counted; a Gaussian falls to a half in half of it. */
  readonly unit: number;
  readonly peak: number;
  readonly centre: number;
}

/**
 * More terms than these take their time and tell little: with eight even the sharp foot of a filled graded fibre, 1 − sin²θ,
 * is followed to a third of a per cent (computed).
 */
const mostTerms = 8;

/** How many terms more than the likeliest number are kept: what a further one would tell must stay below the noise. */
const spareTerms = 2;

/**
 * An even curve with as many terms as the readings can bear and need, each next one begun where the last one ended.
 *
 * @returns the fit and the size of a step in each of its parameters; null where there is none
 */
export function layTerms({
  x,
  y,
  unit,
  peak,
  centre,
}: Laying): { readonly fit: Fit; readonly scales: readonly number[] } | null {
  const residuals = (p: readonly number[]): readonly number[] =>
    x.map((at, i) => evenCurveAt(p, at, unit) - y[i]!);
  const slopesOf = (p: readonly number[]): readonly (readonly number[])[] => evenCurveSlopes(x, p, unit);
  const most = Math.min(mostTerms, Math.floor((x.length - 3) / 2));
  const fits: { fit: Fit; scales: readonly number[]; cost: number }[] = [];
  // a Gaussian falls to a half in half a unit: k₁ = 4 ln 2
  let guess: readonly number[] = [peak, centre, 4 * Math.LN2];
  let cheapest = 0;
  for (let terms = 1; terms <= most && fits.length <= cheapest + spareTerms + 1; terms++) {
    const scales = [Math.abs(peak), unit / 4, 1, ...new Array<number>(terms - 1).fill(0.3)];
    const fit = levenbergMarquardt(residuals, guess, scales, usualFitLimits, slopesOf);
    guess = [...guess, 0];
    if (fit.inverse === null || !(fit.parameters[0]! > 0)) continue;
    fits.push({ fit, scales, cost: costOf(fit.squares, fit.parameters.length, x.length) });
    if (fits.at(-1)!.cost < fits[cheapest]!.cost) cheapest = fits.length - 1;
    guess = [...fit.parameters, 0];
  }
  return fits[Math.min(fits.length - 1, cheapest + spareTerms)] ?? null;
}

/**
 * What a fit leaves over and what its terms cost; the likeliest has the least.
 *
 * @source N. Sugiura, Commun. Stat. A 7, 13 (1978): Akaike's criterion for few readings (from memory)
 */
const costOf = (squares: number, k: number, count: number): number =>
  count > k + 2
    ? count * Math.log(squares / count) + (2 * (k + 1) * count) / (count - k - 2)
    : Number.POSITIVE_INFINITY;
