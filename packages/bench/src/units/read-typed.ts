import type { Dimension } from './dimension.ts';
import type { QuantityRead } from './quantity-read.ts';
import { type QuantityRefused, readQuantity } from './read-quantity.ts';
import { writeValue } from './write.ts';

/**
 * A value as somebody types it beside one that is on the screen: a bare number takes that one's unit, and a comma is a decimal
 * point.
 *
 * @param shown SI; null: there is none, and a bare number is refused where its dimension has a unit
 */
export function readTyped(
  text: string,
  dimension: Dimension,
  shown: number | null,
): QuantityRead | QuantityRefused {
  const written = text.trim().replace(/^([-−]?\d+),(\d+)/u, '$1.$2');
  const [, unit = ''] = /^\S+(\s.*)$/u.exec(shown === null ? '' : writeValue(shown, dimension)) ?? [];
  const isBare = /^[-−]?[\d.]+(?:e[+-]?\d+)?$/iu.test(written);
  return readQuantity(isBare ? `${written}${unit}` : written, dimension);
}
