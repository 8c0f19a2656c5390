import { normalCdf, normalQuantile } from '@coreward/optics';
import { Refusal } from '../refusal.ts';
import type { Quantity } from './quantity.ts';

/** Two values with a stated probability between them. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/**
 * The value that the quantity is below with probability `p`; in the unit of `value`. At 0 and 1 a `rectangular` one
 * gives its limits, the others −∞ (0 if `positive`) and ∞; an exact one always gives its value.
 *
 * `quantileOf(quantity, random())` with a uniform `random` draws a sample.
 *
 * @throws {Refusal} if `p` is no probability, or a `positive` value is not above zero
 * @source JCGM 101:2008, 6.4.2 (rectangular), 6.4.7 (normal): from memory; the log-normal of `positive` is its own
 *   definition (`Shape`)
 */
export function quantileOf(quantity: Quantity, p: number): number {
  mustBeProbability(p, 'quantileOf');
  const { value, uncertainty, shape } = quantity;
  if (uncertainty === 0) return value;
  switch (shape) {
    case 'normal':
      return value + uncertainty * normalQuantile(p);
    case 'rectangular':
      return value + uncertainty * Math.sqrt(3) * (2 * p - 1);
    case 'positive':
      return value * Math.exp(logDeviation(quantity) * normalQuantile(p));
  }
}

/**
 * Probability that the quantity is at most `x`; the inverse of `quantileOf`.
 *
 * @throws {Refusal} if a `positive` value is not above zero
 */
export function cumulativeOf(quantity: Quantity, x: number): number {
  const { value, uncertainty, shape } = quantity;
  if (uncertainty === 0) return x < value ? 0 : 1;
  switch (shape) {
    case 'normal':
      return normalCdf((x - value) / uncertainty);
    case 'rectangular':
      return Math.max(0, Math.min(1, 0.5 + (x - value) / (2 * Math.sqrt(3) * uncertainty)));
    case 'positive':
      return x <= 0 ? 0 : normalCdf(Math.log(x / value) / logDeviation(quantity));
  }
}

/**
 * The central interval that holds the quantity with this probability: `intervalOf(quantity, 0.9)` reaches from its 5 %
 * to its 95 % point.
 *
 * @throws {Refusal} as `quantileOf` does
 */
export function intervalOf(quantity: Quantity, probability: number): Interval {
  mustBeProbability(probability, 'intervalOf');
  const tail = (1 - probability) / 2;
  return { low: quantileOf(quantity, tail), high: quantileOf(quantity, 1 - tail) };
}

/** Standard deviation of the logarithm of a `positive` quantity. */
function logDeviation({ value, uncertainty }: Quantity): number {
  if (!(value > 0)) {
    throw new Refusal({
      where: 'quantity',
      what: `a quantity of the shape \`positive\` has the value ${value}`,
      mend: 'Give it a value above zero, or the shape `normal`.',
    });
  }
  return uncertainty / value;
}

function mustBeProbability(p: number, where: string): void {
  if (!(p >= 0 && p <= 1)) {
    throw new Refusal({ where, what: `${p} is no probability`, mend: 'Give a number from 0 to 1.' });
  }
}
