import { attempt } from './attempt.ts';
import type { Dimension } from './dimension.ts';
import { mendFor, type QuantityOptions } from './mend.ts';
import type { QuantityRead } from './quantity-read.ts';

/** Why a text is no quantity of its dimension; the caller adds where it stands. */
export interface QuantityRefused {
  readonly ok: false;
  /** With the offending text as written: "`6.2` has no unit". */
  readonly what: string;
  /** The one change that is read if followed to the letter. */
  readonly mend: string;
}

/**
 * A quantity as people write it, in SI: `1.1 mm`, `1.1 mm ± 0.1 mm`, `1.1 mm ± 9 %`, `1.1 mm within 5 %`. Never throws.
 *
 * `±` is one standard uncertainty (JCGM 100); `within` are hard limits. The shape is `normal`, `rectangular` for
 * `within`, and `positive` where the uncertainty of something that cannot be negative is more than a quarter of it, or
 * was given in decibels. `uncertainty` is `null` where none was written: what that means is for the caller to say.
 */
export function readQuantity(
  text: string,
  dimension: Dimension,
  options: QuantityOptions = {},
): QuantityRead | QuantityRefused {
  const read = attempt(text, dimension, options);
  if (read.ok) return read;
  return { ok: false, what: read.what, mend: mendFor(text, read, dimension, options) };
}
