import type { Dimension } from '../units/dimension.ts';
import { readTyped } from '../units/read-typed.ts';
import { writeTogether, writeValue } from '../units/write.ts';
import type { ReadingUnit } from './reading.ts';

const dimensionOf: Readonly<Record<ReadingUnit, Dimension>> = {
  W: 'power',
  V: 'voltage',
  A: 'current',
  relative: 'number',
  step: 'number',
};

/**
 * A reading for people, to four digits, zeros at the end kept so that a number that comes ten times a second stays as wide
 * as it is: `1.200 mW`; `+2 steps` of an eye.
 */
export function readingWords(value: number, unit: ReadingUnit): string {
  if (unit === 'step') return `${value > 0 ? '+' : ''}${writeValue(value, 'number')} ${stepsOf(value)}`;
  if (!Number.isFinite(value)) return writeValue(value, dimensionOf[unit]);
  const written = writeTogether([value], dimensionOf[unit], 4);
  return `${written.numbers.join('')}${written.unit}`;
}

const stepsOf = (value: number): string => (Math.abs(value) === 1 ? 'step' : 'steps');

/** Values of an axis to the digits in which they differ, and the unit they share: `0.98`, `1.00` and `mW`. */
export function axisWords(
  values: readonly number[],
  unit: ReadingUnit,
): { readonly numbers: readonly string[]; readonly unit: string } {
  const largest = Math.max(...values.map(Math.abs));
  const apart = Math.abs((values[1] ?? largest) - (values[0] ?? 0));
  const most = 15;
  // as many digits as it takes until every value is written as it is, to a thousandth of their distance
  const first = apart > 0 ? Math.min(most, Math.max(2, Math.ceil(Math.log10(largest / apart)))) : 3;
  const enough = (digits: number): boolean => {
    const place = 10 ** (Math.floor(Math.log10(largest)) - digits + 1);
    return values.every((value) => Math.abs(value - Math.round(value / place) * place) <= apart / 1000);
  };
  let digits = first;
  while (digits < most && apart > 0 && !enough(digits)) digits += 1;
  const written = writeTogether(values, dimensionOf[unit], digits);
  return { numbers: written.numbers, unit: unit === 'step' ? 'steps' : written.unit.trim() };
}

/** How an instrument is, in a word: readings come, it will go on by itself, nobody wants any, somebody must do something. */
export const stateWords = {
  reading: 'reading',
  gap: 'silent',
  off: 'off',
  trouble: 'needs a hand',
} as const;

/** How fast readings come: `9.8 a second`, `one in 4 s`. */
export const rateWords = (rate: number): string =>
  rate < 0.95 ? `one in ${writeValue(1 / rate, 'time', 2)}` : `${writeValue(rate, 'number', 2)} a second`;

/**
 * How much a reading scatters, and which share of the light that is: `2.1 µW (0.2 %)`.
 *
 * @param noise standard deviation of a single reading
 * @param light the reading without its floor; null: not known
 */
export function noiseWords(noise: number, unit: ReadingUnit, light: number | null): string {
  const text = writeValue(noise, dimensionOf[unit], 2);
  return light === null || light <= 0 ? text : `${text} (${writeValue(noise / light, 'fraction', 2)})`;
}

/** A reading as it was typed, or why it is none. */
export type TypedReading =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly what: string; readonly mend: string };

/**
 * A reading as somebody types it off a meter: `1.25 mW`, `−3 dBm`, `12,5`; a bare number has the unit of the one before.
 *
 * @param before null: there was none, and a bare number of a power is refused
 */
export function readTypedReading(text: string, unit: ReadingUnit, before: number | null): TypedReading {
  const read = readTyped(text, dimensionOf[unit], before);
  return read.ok ? { ok: true, value: read.value } : { ok: false, what: read.what, mend: read.mend };
}
