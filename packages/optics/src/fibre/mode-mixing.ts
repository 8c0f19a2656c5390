import { besselJ1 } from '../numerics/bessel-j.ts';
import { besselZero } from '../numerics/bessel-zero.ts';
import { brentRoot } from '../numerics/brent.ts';
import { OutOfRange } from '../out-of-range.ts';

/** A length of step-index fibre in which light spreads over the angles as it goes along. */
export interface MixingFibre {
  readonly numericalAperture: number;
  /** Of the core. */
  readonly index: number;
  /** m. */
  readonly length: number;
  /** Gloge's D, rad² per metre inside the core; 0: nothing mixes. */
  readonly mixing: number;
}

/** Solutions of the power-flow equation that fade by e^(−λ²Dz/θ_c²); the twelfth is below 1e-11 where the series begins. */
const fading = Array.from({ length: 12 }, (_, i) => {
  const root = besselZero(0, i + 1);
  const slope = besselJ1(root);
  return { root, power: 1 / (root * slope), meanSquare: 1 - 4 / root ** 2 };
});

/**
 * Mean square of sin θ / NA where mixing and the loss at the critical angle keep each other's balance: that of J₀(j₀₁θ/θ_c),
 * the solution that fades last, 1 − 4/j₀₁².
 */
export const balancedAngleSquared = fading[0]!.meanSquare;

/** Until then (Dz/θ_c²) the edge is felt by less than 1e-5, and the angle spreads freely. */
const free = 0.02;

/** ⟨θ²⟩/θ_c² of light that set out along the axis, at Dz/θ_c². */
function spreadAt(travelled: number): number {
  if (travelled <= free) return 4 * travelled;
  let power = 0;
  let weighed = 0;
  for (const { root, power: own, meanSquare } of fading) {
    const left = own * Math.exp(-(root ** 2) * travelled);
    power += left;
    weighed += left * meanSquare;
  }
  return weighed / power;
}

/** From here on (Dz/θ_c²) the balance is kept to the last digit. */
const settled = 1.5;

/**
 * Mean square of the far field's sin θ / NA (0 to 1) behind a length of fibre that mixes its modes. In the fibre ⟨θ²⟩ grows
 * by 4D a metre, for the angle diffuses in two dimensions, until it comes to rest at `balancedAngleSquared`. Light that sets
 * out wider than that keeps its angle here; in truth its steepest part is lost.
 *
 * Valid for many modes of a step-index core, small angles, and light about as bright over the angles as if it had diffused
 * from the axis; a Gaussian is.
 *
 * @param before the same where the light enters, 0 to 1
 * @throws {OutOfRange} for a length or mixing below zero
 * @source D. Gloge, Bell Syst. Tech. J. 51, 1767 (1972), the power-flow equation with constant coupling (from memory),
 *   solved by its Fourier-Bessel series; checked against the equation solved on a grid
 */
export function mixedAngleSquared(before: number, fibre: MixingFibre): number {
  const { numericalAperture, index, length, mixing } = fibre;
  if (!(length >= 0) || !(mixing >= 0)) {
    throw new OutOfRange({
      where: 'mixedAngleSquared fibre',
      what: `a length of ${length} m and a mixing of ${mixing} rad²/m`,
      mend: 'Give both as 0 or more.',
    });
  }
  if (before >= spreadAt(settled)) return before;
  const come = before <= 4 * free ? before / 4 : brentRoot((at) => spreadAt(at) - before, free, settled);
  return Math.max(before, spreadAt(come + (mixing * index ** 2 * length) / numericalAperture ** 2));
}

/**
 * D of acrylic step-index fibres, rad²/m; fibres differ so much, and bends and age add to it. Silica has a hundredth of it or
 * less, and short pieces keep the angle at which light came in.
 *
 * @source values of 1e-4 to 7e-4 rad²/m are published for PMMA fibres, as by W. A. Gambling, D. N. Payne and
 *   H. Matsumura, Appl. Opt. 14, 1538 (1975), and by S. Savović and A. Djordjevich since 2000 (from memory)
 */
export const acrylicMixing = { low: 1e-4, expected: 2.5e-4, high: 7e-4 } as const;
