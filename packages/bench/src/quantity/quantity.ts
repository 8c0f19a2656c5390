/** Where a value comes from, most trusted first. */
export const origins = ['measured', 'datasheet', 'assumed'] as const;
export type Origin = (typeof origins)[number];

/**
 * How the doubt is distributed.
 * `normal`: bell about the value. `rectangular`: anywhere within ±√3·uncertainty, nowhere else.
 * `positive`: the logarithm is normal, for what cannot be zero or negative; `value` is the median and
 * `uncertainty / value` the standard deviation of the logarithm.
 */
export type Shape = 'normal' | 'rectangular' | 'positive';

/** One number as the bench knows it. SI; the field that holds it says what it is. */
export interface Quantity {
  readonly value: number;
  /** Standard uncertainty (JCGM 100), in the unit of `value`; 0 only for what is exact. */
  readonly uncertainty: number;
  readonly shape: Shape;
  readonly origin: Origin;
  /** For people: "knife edge, 3 scans". */
  readonly note?: string;
}

/** A quantity at its place in a document. */
export interface Entry extends Quantity {
  /** The place as the user spells it: `laser.beam.waist diameter`. */
  readonly key: string;
  /** What the document left to the defaults: the `value` too, the `uncertainty` alone, or `nothing`. */
  readonly defaulted: 'nothing' | 'uncertainty' | 'value';
}
