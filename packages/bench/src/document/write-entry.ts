import type { Entry } from '../quantity/quantity.ts';
import type { Dimension } from '../units/dimension.ts';
import { exactText } from '../units/exact-text.ts';
import { positiveFrom } from '../units/settle.ts';
import type { Written } from './write-tree.ts';

/**
 * An entry as it would stand in a document that is read back to the same entry; `null` where the document may stay
 * silent, for reading fills the same value in again.
 *
 * @param more further keys of its map, such as where it holds
 */
export function writtenEntry(
  entry: Entry,
  dimension: Dimension,
  more: { readonly [key: string]: Written | null } = {},
): Written | null {
  if (entry.defaulted === 'value') return null;
  const value =
    entry.defaulted === 'uncertainty' ? exact(entry.value, dimension) : withDoubt(entry, dimension);
  const told = {
    origin: entry.origin === 'assumed' ? null : entry.origin,
    note: entry.note ?? null,
    ...more,
  };
  return Object.values(told).every((text) => text === null) ? value : { value, ...told };
}

function exact(value: number, dimension: Dimension): string {
  // beside `0.97`, `± 1 %` would be a share; beside `97 %` it is percentage points
  return dimension === 'fraction' ? exactText(value, dimension, '%') : exactText(value, dimension);
}

function withDoubt({ value, uncertainty, shape }: Entry, dimension: Dimension): string {
  const written = exact(value, dimension);
  if (shape === 'rectangular') return `${written} within ${exact(halfWidth(uncertainty), dimension)}`;
  const asAmount = uncertainty > positiveFrom * value && uncertainty <= value;
  if (shape === 'positive' && dimension === 'power' && !asAmount) {
    // narrower or wider than an amount can be and still be positive: it was written as a factor
    return `${written} ± ${exactText(uncertainty / value, 'loss')}`;
  }
  return `${written} ± ${exact(uncertainty, dimension)}`;
}

/** The half-width that reading divides by √3 to exactly this standard uncertainty, or the nearest there is. */
function halfWidth(uncertainty: number): number {
  const near = uncertainty * Math.sqrt(3);
  const step = near * Number.EPSILON;
  return [near, near - step, near + step].find((half) => half / Math.sqrt(3) === uncertainty) ?? near;
}
