import type { Expected } from '../forecast/expected.ts';
import { intervalOf } from '../quantity/distribution.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Dimension } from '../units/dimension.ts';
import { writeInterval, writeTogether, writeValue } from '../units/write.ts';

/** Two ends of a doubt, SI. */
export interface Ends {
  readonly low: number;
  readonly high: number;
}

/**
 * Digits that the larger end of an interval bears: the last one is worth a fifth of the width at most, so that
 * rounding moves no end by more than a tenth of it. Efficiencies and powers never bear more than three.
 */
export function digitsFor({ low, high }: Ends, dimension: Dimension): number {
  const largest = Math.max(Math.abs(low), Math.abs(high));
  const width = Math.abs(high - low);
  const most = dimension === 'fraction' || dimension === 'power' ? 3 : 5;
  if (width === 0 || largest === 0) return 3;
  const digits = Math.floor(Math.log10(largest)) - Math.floor(Math.log10(width / 5)) + 1;
  return Math.min(most, Math.max(2, digits));
}

/** `2.1 mW (1.6 to 2.6 mW)`, all in one unit; without the interval where none would show. */
export function expectedText(expected: Expected, dimension: Dimension): string {
  return withInterval(valueText(expected, dimension), expected, dimension);
}

/** The same for two that are to be compared: in one unit, and to the place that the narrower one bears. */
export function expectedTexts(
  one: Expected,
  other: Expected,
  dimension: Dimension,
): readonly [string, string] {
  const all = [one, other].flatMap(({ value, low, high }) => [value, low, high]);
  const largest = Math.max(...all.map(Math.abs));
  const digits = Math.max(
    ...[one, other].map(({ low, high }) =>
      digitsFor({ low: largest - (high - low), high: largest }, dimension),
    ),
  );
  const { numbers, unit } = writeTogether(all, dimension, digits);
  const text = (expected: Expected, [value, low, high]: readonly string[]): string => {
    const number = printsZero(value!) ? valueText(expected, dimension) : `${value}${unit}`;
    if (low === high) return number;
    return `${number} (${fromTo(low!, high!)}${unit})`;
  };
  return [text(one, numbers.slice(0, 3)), text(other, numbers.slice(3))];
}

/** The value of an interval, in the unit of its ends (its own where it is far below them) and in digits that it bears. */
export function valueText(expected: Expected, dimension: Dimension): string {
  const { value, low, high } = expected;
  const digits = digitsFor(expected, dimension);
  const own = Math.abs(value) < Math.max(Math.abs(low), Math.abs(high)) / 100;
  if (own || faint(value, dimension)) return figure(value, dimension, digits);
  const { unit } = writeTogether([low, high, value], dimension, digits);
  return writeValue(value, dimension, digits, unit.trim());
}

/**
 * A value as the document states it, with the interval that its doubt comes to: `11.5 mW (10 to 13 mW)`.
 *
 * @param unit as in `nm`; left out: the unit people use at that size
 */
export function statedText(entry: Quantity, dimension: Dimension, unit?: string): string {
  // nobody states more than four digits and means them
  return withInterval(writeValue(entry.value, dimension, 4, unit), intervalOf(entry, 0.9), dimension, unit);
}

function withInterval(value: string, ends: Ends, dimension: Dimension, unit?: string): string {
  const interval = intervalText(ends, dimension, unit);
  return interval === null ? value : `${value} (${interval})`;
}

/**
 * `1.6 to 2.6 mW`, or `up to 2.6 mW` where the lower end is too little to show beside the other; `null` where the two
 * ends are the same in the digits that would be shown.
 */
export function intervalText(ends: Ends, dimension: Dimension, unit?: string): string | null {
  const digits = digitsFor(ends, dimension);
  const text = faint(ends.high, dimension)
    ? figure(ends.high, dimension, digits)
    : interval(ends, dimension, digits, unit);
  // `100 to 100 %`
  return !text.includes(' to ') || /^(.+) to \1(?:[\s°]|$)/u.test(text) ? null : text;
}

function interval({ low, high }: Ends, dimension: Dimension, digits: number, unit?: string): string {
  if (!Number.isFinite(low) || !Number.isFinite(high))
    return writeInterval(low, high, dimension, digits, unit);
  const { numbers, unit: written } = writeTogether([low, high], dimension, digits, unit);
  return `${fromTo(numbers[0]!, numbers[1]!)}${written}`;
}

/** Two ends as they are written; a lower one of zeros is left out. */
const fromTo = (low: string, high: string): string =>
  printsZero(low) ? `up to ${high}` : `${low} to ${high}`;

/** Whether a number as it is written says nothing is left: `0`, `0.00`. */
function printsZero(written: string): boolean {
  return /^0(?:\.0+)?$/u.test(written);
}

/** `18 %`; near all of it three digits, for there the loss is what tells. */
export function shareText(share: number): string {
  return figure(share, 'fraction', share > 0.9 ? 3 : 2);
}

/** A value with so many digits, or in words where it is too little to matter in its dimension. */
export function figure(value: number, dimension: Dimension, digits: number): string {
  if (faint(value, dimension)) return dimension === 'power' ? 'under 1 pW' : 'under 0.0001 %';
  return writeValue(value, dimension, digits);
}

/** Less than anyone can measure on a bench, and not nothing. */
function faint(value: number, dimension: Dimension): boolean {
  switch (dimension) {
    case 'power':
      return value > 0 && value < 1e-12;
    case 'fraction':
      return value > 0 && value < 1e-6;
    default:
      return false;
  }
}
