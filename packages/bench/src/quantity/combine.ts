import { Refusal } from '../refusal.ts';
import { weakestOrigin } from './origin.ts';
import { type Origin, origins, type Quantity } from './quantity.ts';

/** A value without doubt, such as a count or a definition. It takes no trust from what it is combined with. */
export function exact(value: number, origin: Origin = origins[0]): Quantity {
  return { value, uncertainty: 0, shape: 'normal', origin };
}

/**
 * `formula` of independent inputs, uncertainty to first order: each slope is taken from one uncertainty below the value
 * to one above. No result is trusted more than its weakest input. The shape is `normal`, whatever the inputs' shapes.
 *
 * Valid where the formula is nearly straight over the doubt of each input; where it is bent, or its result cannot be
 * negative and nearly is, draw samples with `quantileOf` instead.
 *
 * @throws {Refusal} if the formula has no finite value at the inputs or one uncertainty beside them
 * @source JCGM 100:2008 (GUM), 5.1.2, equation (10), and the note to 5.1.3 on slopes from finite differences: from memory
 */
export function combine(inputs: readonly Quantity[], formula: (...values: number[]) => number): Quantity {
  const values = inputs.map(({ value }) => value);
  const value = mustBeFinite(formula(...values));
  const contributions = inputs.map((input, i) => {
    if (input.uncertainty === 0) return 0;
    const { low, high, scale } = oneUncertaintyBeside(input);
    const rise = formula(...values.with(i, high)) - formula(...values.with(i, low));
    return mustBeFinite(rise * scale);
  });
  return {
    value,
    uncertainty: Math.hypot(...contributions),
    shape: 'normal',
    origin: weakestOrigin(inputs.map(({ origin }) => origin)),
  };
}

/** Where to take the slope, and what turns the rise between the two places into the rise over one uncertainty. */
function oneUncertaintyBeside({ value, uncertainty, shape }: Quantity): {
  readonly low: number;
  readonly high: number;
  readonly scale: number;
} {
  switch (shape) {
    case 'normal':
    case 'rectangular':
      return { low: value - uncertainty, high: value + uncertainty, scale: 1 / 2 };
    case 'positive': {
      // By a factor, so that no formula is asked about a negative value; the scale keeps a straight formula exact.
      const logarithm = uncertainty / value;
      const step = Math.exp(logarithm);
      return { low: value / step, high: value * step, scale: logarithm / (2 * Math.sinh(logarithm)) };
    }
  }
}

function mustBeFinite(result: number): number {
  if (Number.isFinite(result)) return result;
  throw new Refusal({
    where: 'combine',
    what: `the formula gives ${result} within one uncertainty of its inputs`,
    mend: 'Give the inputs smaller uncertainties.',
  });
}
