import type { Quantity } from '../quantity/quantity.ts';
import { leadingPlace, roundedAt } from './decimal.ts';
import type { Dimension } from './dimension.ts';
import { exactText } from './exact-text.ts';
import { type Rounded, toSignificant, withoutTrailingZeros, writeRounded } from './number-writing.ts';
import { differenceInUnit, inUnit, unitFor, type WritingUnit, writingUnit } from './writing-units.ts';

/**
 * An SI value for people, with at most `digits` significant digits: `8.2 µm`, `635 nm`, `0.25 mrad`, `97 %`.
 * What is not finite is `∞`, `−∞` or `unknown`.
 *
 * @param unit as in `nm`; left out: the unit people use at that size
 */
export function writeValue(value: number, dimension: Dimension, digits = 3, unit?: string): string {
  if (!Number.isFinite(value)) return notFinite(value);
  const chosen = unit === undefined ? unitFor(shown(value, digits), dimension) : writingUnit(unit);
  return join(withoutTrailingZeros(toSignificant(inUnit(value, chosen), digits)), chosen);
}

/** Two ends in one unit and to one place: `0.95 to 1.28 mm`. */
export function writeInterval(
  low: number,
  high: number,
  dimension: Dimension,
  digits = 3,
  unit?: string,
): string {
  if (!Number.isFinite(low) || !Number.isFinite(high)) {
    return `${writeValue(low, dimension, digits, unit)} to ${writeValue(high, dimension, digits, unit)}`;
  }
  const { numbers, unit: chosen } = writeTogether([low, high], dimension, digits, unit);
  return `${numbers.join(' to ')}${chosen}`;
}

/**
 * Finite SI values in one unit and to one place, that of the last of so many `digits` of the largest: `0.98`, `0.01` and
 * ` mW`, the unit with the gap before it.
 */
export function writeTogether(
  values: readonly number[],
  dimension: Dimension,
  digits = 3,
  unit?: string,
): { readonly numbers: readonly string[]; readonly unit: string } {
  const largest = Math.max(...values.map(Math.abs));
  const chosen = unit === undefined ? unitFor(shown(largest, digits), dimension) : writingUnit(unit);
  const counted = values.map((value) => inUnit(value, chosen));
  // a zero has no first digit to count from
  const places = counted.filter((one) => one.digits !== 0n).map((one) => toSignificant(one, digits).place);
  const place = places.length === 0 ? 0 : Math.max(...places);
  return {
    numbers: counted.map((one) => typographic(writeRounded({ count: roundedAt(one, place), place }))),
    unit: `${chosen.gap}${chosen.text}`,
  };
}

/**
 * Value and uncertainty, the uncertainty to two significant digits and the value to the same place: `1.10 mm ± 0.10 mm`.
 * A rectangular one is written by its hard limits, `1.10 mm within 0.19 mm`; an exact one ends in `± 0`.
 *
 * Read back it is the same to the digits shown. A `positive` shape comes back `normal` where the uncertainty is a small
 * share of the value, for there the two are the same to those digits.
 *
 * @param unit as in `nm`; left out: the unit people use at that size
 */
export function writeQuantity(quantity: Quantity, dimension: Dimension, unit?: string): string {
  const { value, uncertainty, shape } = quantity;
  if (!Number.isFinite(value) || !Number.isFinite(uncertainty)) return writeValue(value, dimension, 3, unit);
  const half = shape === 'rectangular' ? uncertainty * Math.sqrt(3) : uncertainty;
  // A value that drowns in its uncertainty takes the uncertainty's unit.
  const size = Math.abs(value) < half / 100 ? half : Math.abs(value);
  const chosen = unit === undefined ? unitFor(size, dimension) : writingUnit(unit);
  if (half === 0)
    return `${typographic(exactText(value, dimension, chosen.text))} ± 0${chosen.gap}${chosen.text}`;
  const spread = toSignificant(differenceInUnit(half, chosen), 2);
  const number = inUnit(value, chosen);
  // A double has no more than 17 digits to show, however small the uncertainty.
  const place = Math.max(spread.place, leadingPlace(number) - 16);
  const mark = shape === 'rectangular' ? 'within' : '±';
  return `${join({ count: roundedAt(number, place), place }, chosen)} ${mark} ${join(spread, chosen)}`;
}

/** A transmission, or any ratio of powers, in decibels: `−3.1 dB`, `−0.18 dB`, `+0.05 dB`, `−∞ dB`. */
export function writeDecibel(ratio: number): string {
  if (ratio === 0) return '−∞ dB';
  return `${signed(10 * Math.log10(ratio), '+')} dB`;
}

/** A power (W) in decibels over a milliwatt: `−3.1 dBm`. */
export function writeDecibelMilliwatt(power: number): string {
  if (power === 0) return '−∞ dBm';
  return `${signed(10 * Math.log10(power / 1e-3), '')} dBm`;
}

/** Tenths of a decibel, hundredths below one. */
function signed(decibels: number, plus: '+' | ''): string {
  if (!Number.isFinite(decibels)) return notFinite(decibels);
  const text = decibels.toFixed(Math.abs(decibels) < 0.995 ? 2 : 1);
  if (Number(text) === 0) return '0';
  return decibels > 0 ? `${plus}${text}` : typographic(text);
}

function join(rounded: Rounded, { gap, text }: WritingUnit): string {
  return `${typographic(writeRounded(rounded))}${gap}${text}`;
}

function typographic(text: string): string {
  return text.replaceAll('-', '−');
}

/** The magnitude as it will be shown, so that 999.96 nm takes the unit of 1 µm. */
function shown(value: number, digits: number): number {
  return Math.abs(Number(value.toPrecision(digits)));
}

function notFinite(value: number): string {
  if (Number.isNaN(value)) return 'unknown';
  return value > 0 ? '∞' : '−∞';
}
