import { type Decimal, leadingPlace, roundedAt } from './decimal.ts';

/** A number rounded to a decimal place: `count · 10^place`. */
export interface Rounded {
  readonly count: bigint;
  readonly place: number;
}

/** To so many significant digits. 9.996 to three is 10.0, not 10.00. */
export function toSignificant(a: Decimal, digits: number): Rounded {
  const place = leadingPlace(a) - digits + 1;
  const count = roundedAt(a, place);
  const grew = String(count < 0n ? -count : count).length > digits;
  return grew ? { count: roundedAt(a, place + 1), place: place + 1 } : { count, place };
}

/** `8.20`, `1550`, `2.3e-9`: with a power of ten only where zeros would hide the number. ASCII minus. */
export function writeRounded({ count, place }: Rounded): string {
  const sign = count < 0n ? '-' : '';
  const digits = String(count < 0n ? -count : count);
  const first = digits.length - 1 + place;
  if (count !== 0n && (first < -4 || first > 6)) {
    const tail = digits.length > 1 ? `.${digits.slice(1)}` : '';
    return `${sign}${digits.charAt(0)}${tail}e${first}`;
  }
  if (place >= 0) return `${sign}${digits}${'0'.repeat(count === 0n ? 0 : place)}`;
  const padded = digits.padStart(1 - place, '0');
  return `${sign}${padded.slice(0, place)}.${padded.slice(place)}`;
}

/** Drops zeros that only fill places: `8.20` becomes `8.2`. */
export function withoutTrailingZeros({ count, place }: Rounded): Rounded {
  if (count === 0n) return { count, place: 0 };
  let [c, p] = [count, place];
  while (c % 10n === 0n) [c, p] = [c / 10n, p + 1];
  return { count: c, place: p };
}
