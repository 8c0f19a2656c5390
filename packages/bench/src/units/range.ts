import { type Dimension, dimensionFacts, type Floor } from './dimension.ts';
import type { QuantityLimits } from './quantity-read.ts';

/** What a value may be, SI. */
export interface Range {
  readonly floor: Floor;
  /** Included, unless the floor is `positive` and this is 0. */
  readonly low: number;
  /** Included. */
  readonly high: number;
}

/** What the dimension and the key allow, whichever is stricter. */
export function rangeOf(dimension: Dimension, { positive, min, max }: QuantityLimits): Range {
  const { floor: own, ceiling = Infinity } = dimensionFacts[dimension];
  const least = min ?? -Infinity;
  const isPositive = own === 'positive' || positive === true || least > 0;
  const isFloored = isPositive || own === 'orZero' || positive === 'orZero' || least >= 0;
  return {
    floor: isPositive ? 'positive' : isFloored ? 'orZero' : 'none',
    low: isFloored ? Math.max(0, least) : least,
    high: Math.min(max ?? Infinity, ceiling),
  };
}
