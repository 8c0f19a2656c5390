import { OutOfRange } from '../out-of-range.ts';
import { chebyshevSeries } from './chebyshev.ts';
import { erfcCoefficients } from './erfc-chebyshev.ts';

/**
 * erfc(x) = (2/√π)∫ₓ^∞ e^(−t²)dt, the complementary error function. Relative error below 1e-14 up to x = 26, where it
 * underflows.
 *
 * @source a Chebyshev series of e^(x²) erfc(x), as in J. L. Schonfelder, Math. Comp. 32, 1232 (1978) (from memory);
 *   coefficients in `erfc-chebyshev.ts`
 */
export function erfc(x: number): number {
  const size = Math.abs(x);
  // e^(−28²) is below the least of doubles; much further out the correction below would overflow against it
  if (size > 28) return x < 0 ? 2 : 0;
  const series = chebyshevSeries(erfcCoefficients, (size - 3.75) / (size + 3.75)) / (1 + 2 * size);
  // e^(−x²) with x split in a short part, whose square is exact, and a rest; or a large x would cost digits.
  const short = Math.fround(size);
  const tail = series * Math.exp(-short * short) * Math.exp((short - size) * (short + size));
  return x < 0 ? 2 - tail : tail;
}

/** Probability that a normal variable of mean 0 and deviation 1 is below z. Relative error below 2e-16·(2 + z²) for z > −37. */
export function normalCdf(z: number): number {
  return z === Number.NEGATIVE_INFINITY ? 0 : z === Number.POSITIVE_INFINITY ? 1 : erfc(-z / Math.SQRT2) / 2;
}

/**
 * The z below which a normal variable of mean 0 and deviation 1 falls with the given probability; −∞ for 0, ∞ for 1.
 *
 * Error below 1e-13 of max(1, |z|).
 *
 * @throws {OutOfRange} if the probability is outside 0 … 1
 * @source first guess: Abramowitz & Stegun 26.2.23 (from memory); then Halley's method on ln of `normalCdf`
 */
export function normalQuantile(probability: number): number {
  if (!(probability >= 0 && probability <= 1)) {
    throw new OutOfRange({
      where: 'normalQuantile',
      what: `${probability} is no probability`,
      mend: 'Give a number from 0 to 1.',
    });
  }
  if (probability > 0.5) return -lowerQuantile(1 - probability);
  return probability === 0.5 ? 0 : lowerQuantile(probability);
}

/** For probabilities below ½, so that the tail is computed without cancellation. */
function lowerQuantile(probability: number): number {
  if (probability === 0) return Number.NEGATIVE_INFINITY;
  const t = Math.sqrt(-2 * Math.log(probability));
  let z =
    ((0.010328 * t + 0.802853) * t + 2.515517) / (((0.001308 * t + 0.189269) * t + 1.432788) * t + 1) - t;
  for (let turn = 0; turn < 2; turn++) {
    const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
    const below = normalCdf(z);
    const slope = density / below;
    const excess = Math.log(below / probability);
    const newton = excess / slope;
    z -= newton / (1 + (newton * (z + slope)) / 2); // (ln Φ)'' = −(φ/Φ)(z + φ/Φ)
  }
  return z;
}
