import { decimal, times, toNumber } from './decimal.ts';
import type { Dimension } from './dimension.ts';
import { toSignificant, withoutTrailingZeros, writeRounded } from './number-writing.ts';
import { exactUnits, inUnit, unitFor, type WritingUnit, writingUnit } from './writing-units.ts';

/** At 25 digits what is written lies a hundred million times nearer to the double than any other double does. */
const enoughDigits = 25;

/**
 * The shortest text that is read back as exactly this SI value, for export: `8.2 µm`, `45°`, `0.35 dB/km`.
 *
 * @param unit as in `nm`; left out: whichever of the dimension's units makes the text shortest
 * @throws {RangeError} if the value is not finite
 */
export function exactText(value: number, dimension: Dimension, unit?: string): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be written as a quantity`);
  if (unit !== undefined) return exactIn(value, writingUnit(unit));
  const usual = unitFor(Math.abs(value), dimension);
  const first = dimension === 'temperature' ? [] : [usual];
  return [...first, ...exactUnits(dimension)]
    .map((candidate) => exactIn(value, candidate))
    .reduce((best, text) => (text.length < best.length ? text : best));
}

function exactIn(value: number, unit: WritingUnit): string {
  const number = inUnit(value, unit);
  for (let digits = 1; ; digits++) {
    const rounded = withoutTrailingZeros(toSignificant(number, digits));
    const readBack = toNumber(times(decimal(rounded.count, rounded.place), unit.factor)) + unit.zero;
    if (readBack === value || digits === enoughDigits)
      return `${writeRounded(rounded)}${unit.gap}${unit.text}`;
  }
}
