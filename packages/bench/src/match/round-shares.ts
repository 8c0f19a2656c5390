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
  const known = new Map<number, AtBestFocus>();
  const atStep = (i: number, length: number): AtBestFocus => {
    const logSize = i * length;
    let found = known.get(logSize);
    if (found === undefined) {
      found = at(Math.exp(logSize));
      known.set(logSize, found);
    }
    return found;
  };
  return (logSize) => {
    const inside = Math.max(smallest, Math.min(largest, logSize));
    const place = inside / step;
    const below = Math.floor(place);
    const t = place - below;
    const first = atStep(below - 1, step);
    const second = atStep(below, step);
    const third = atStep(below + 1, step);
    const fourth = atStep(below + 2, step);
    const beyond = Math.exp(-2 * Math.abs(logSize - inside));
    const alike = first.besideWaist === fourth.besideWaist;
    if (!alike || second.besideWaist !== first.besideWaist || third.besideWaist !== first.besideWaist) {
      return atStep(Math.round(inside / leapStep), leapStep).taken;
    }
    const [a, b, c, d] = [first.taken, second.taken, third.taken, fourth.taken] as const;
    return {
      guided: Math.min(1, beyond * cubic(a.guided, b.guided, c.guided, d.guided, t)),
      fundamental: Math.min(
        1,
        beyond * cubic(a.fundamental ?? 0, b.fundamental ?? 0, c.fundamental ?? 0, d.fundamental ?? 0, t),
      ),
      // only their ratios are asked for, and these hardly change in half a step
      powers: t < 0.5 ? b.powers : c.powers,
    };
  };
}

/** Where the best focus leaps from the waist to a place beside it, what is guided leaps as well: there sizes lie this close, in ln. */
const leapStep = 0.02;

/** What is too little to have a logarithm. */
const nothing = 1e-30;
const logOf = (share: number): number => Math.log(Math.max(share, nothing));

/** Lagrange's cubic through the logarithms of four shares at −1, 0, 1 and 2. */
function cubic(a: number, b: number, c: number, d: number, t: number): number {
  return Math.exp(
    (-t * (t - 1) * (t - 2) * logOf(a)) / 6 +
      ((t + 1) * (t - 1) * (t - 2) * logOf(b)) / 2 -
      ((t + 1) * t * (t - 2) * logOf(c)) / 2 +
      ((t + 1) * t * (t - 1) * logOf(d)) / 6,
  );
}
