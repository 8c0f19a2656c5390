/*
 * Tables of limits share their boundaries: at 700 nm the row that ends there and the row that begins there both apply,
 * and the stricter one is taken. So every range holds both its ends.
 */

/** A range with both its ends in it; the field that holds it says the unit. */
export interface ClosedRange {
  readonly from: number;
  readonly to: number;
}

/**
 * Vacuum wavelength in nanometres, rounded to 10⁻⁶ nm: `700e-9 * 1e9` is not 700, and the tables step there.
 *
 * @param wavelength m
 */
export function nanometres(wavelength: number): number {
  return Math.round(wavelength * 1e15) / 1e6;
}

/** Whether a value lies in the range, its ends included. */
export function holds({ from, to }: ClosedRange, value: number): boolean {
  return value >= from && value <= to;
}

/** Times are often computed, as N/f: one part in 10⁹ counts as being on the boundary. */
const slack = 1e-9;

/** A range of times, s; `openEnd`: the end itself belongs to the next row alone, which two printed examples show. */
export interface TimeRange extends ClosedRange {
  readonly openEnd?: true;
}

/** Whether a time, s, lies in the range: its ends too, but for an open one, and for rounding on either. */
export function holdsTime({ from, to, openEnd }: TimeRange, time: number): boolean {
  return time >= from * (1 - slack) && (openEnd ? time < to * (1 - slack) : time <= to * (1 + slack));
}
