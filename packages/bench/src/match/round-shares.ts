import type { Taken } from '../forecast/fibre-taker.ts';

/** What a fibre takes of a round, centred beam at its best focus, by ln(waist radius over core radius). */
export type RoundShares = (logSize: number) => Taken;

/** Shares of one size, with the facet where LP01 takes most. */
export interface AtBestFocus {
  readonly taken: Taken;
  readonly besideWaist: boolean;
}

/** Where shares are computed, in ln(size). */
export interface SizeGrid {
  /** Between two places the logarithm of a share is a cubic. */
  readonly step: number;
  /** Beyond them shares fall with the square of the size, and nothing is computed. */
  readonly smallest: number;
  readonly largest: number;
}

/**
 * Shares by the size of the spot alone, computed at a few sizes, when first asked for, and interpolated between: a
 * drawer asks one fibre about hundreds of spots.
 */
export function roundShares(
  { step, smallest, largest }: SizeGrid,
  at: (size: number) => AtBestFocus,
): RoundShares {
  const atStep = remembered((i) => at(Math.exp(i * step)));
  const atLeap = remembered((i) => at(Math.exp(i * leapStep)));
  return (logSize) => {
    const inside = Math.max(smallest, Math.min(largest, logSize));
    const place = inside / step;
    const below = Math.floor(place);
    const t = place - below;
    const first = atStep(below - 1);
    const second = atStep(below);
    const third = atStep(below + 1);
    const fourth = atStep(below + 2);
    const beyond = Math.exp(-2 * Math.abs(logSize - inside));
    const alike = first.besideWaist === fourth.besideWaist;
    if (!alike || second.besideWaist !== first.besideWaist || third.besideWaist !== first.besideWaist) {
      return atLeap(Math.round(inside / leapStep)).taken;
    }
    const between = (of: 'logGuided' | 'logFundamental'): number =>
      Math.min(1, beyond * Math.exp(cubic(first[of], second[of], third[of], fourth[of], t)));
    return {
      guided: between('logGuided'),
      fundamental: between('logFundamental'),
      // only their ratios are asked for, and these hardly change in half a step
      powers: (t < 0.5 ? second : third).taken.powers,
    };
  };
}

/** Shares with the logarithms of the two that are interpolated, taken once instead of at every look. */
interface Known extends AtBestFocus {
  readonly logGuided: number;
  readonly logFundamental: number;
}

/** By whole numbers, for a map takes several times as long to find a fraction. */
function remembered(at: (i: number) => AtBestFocus): (i: number) => Known {
  const known = new Map<number, Known>();
  return (i) => {
    let found = known.get(i);
    if (found === undefined) {
      const { taken, besideWaist } = at(i);
      const logFundamental = logOf(taken.fundamental ?? 0);
      found = { taken, besideWaist, logGuided: logOf(taken.guided), logFundamental };
      known.set(i, found);
    }
    return found;
  };
}

/** Where the best focus leaps from the waist to a place beside it, what is guided leaps as well: there sizes lie this close, in ln. */
const leapStep = 0.02;

/** What is too little to have a logarithm. */
const nothing = 1e-30;
const logOf = (share: number): number => Math.log(Math.max(share, nothing));

/** Lagrange's cubic through four values at −1, 0, 1 and 2. */
function cubic(a: number, b: number, c: number, d: number, t: number): number {
  return (
    (-t * (t - 1) * (t - 2) * a) / 6 +
    ((t + 1) * (t - 1) * (t - 2) * b) / 2 -
    ((t + 1) * t * (t - 2) * c) / 2 +
    ((t + 1) * t * (t - 1) * d) / 6
  );
}
