/**
 * A number as it was written: `digits · 10^exponent / divisor`, without rounding.
 *
 * People write `8.2 µm` and mean the double nearest to 8.2e-6, not 8.2 times the double nearest to 1e-6. Keeping the
 * digits until the very end gives that, for inches, degrees and decibels too, and lets an export be read back to the bit.
 */
export interface Decimal {
  readonly digits: bigint;
  readonly exponent: number;
  /** Above zero. */
  readonly divisor: bigint;
}

/** Beyond this power of ten nothing is left of a double, so that larger ones need not be told apart. */
const largestExponent = 100_000;

/** `digits · 10^exponent / divisor`. */
export function decimal(digits: bigint | number, exponent = 0, divisor: bigint | number = 1): Decimal {
  const clamped = Math.max(-largestExponent, Math.min(largestExponent, exponent));
  return { digits: BigInt(digits), exponent: clamped, divisor: BigInt(divisor) };
}

/** π to 41 digits. @source from memory, checked against mpmath 1.3 */
export const pi = decimal(31415926535897932384626433832795028841972n, -40);

/** One decibel as a natural logarithm of power, ln(10)/10, to 41 digits. @source from memory, checked against mpmath 1.3 */
export const decibel = decimal(23025850929940456840179914546843642076011n, -41);

/** The product, exactly. */
export function times(a: Decimal, b: Decimal): Decimal {
  return decimal(a.digits * b.digits, a.exponent + b.exponent, a.divisor * b.divisor);
}

/** One over `a`, which is not zero. */
export function inverse(a: Decimal): Decimal {
  const sign = a.digits < 0n ? -1n : 1n;
  return decimal(sign * a.divisor, -a.exponent, sign * a.digits);
}

/** `a` to a whole power. */
export function power(a: Decimal, exponent: number): Decimal {
  const base = exponent < 0 ? inverse(a) : a;
  const n = Math.abs(exponent);
  return decimal(base.digits ** BigInt(n), base.exponent * n, base.divisor ** BigInt(n));
}

/** The double nearest to it; ±Infinity where it is too large, 0 where it is too small. */
export function toNumber(a: Decimal): number {
  const { digits, exponent } = quotient(a);
  return Number(`${digits}e${exponent}`);
}

/** Every digit of a finite double. */
export function fromNumber(value: number): Decimal {
  // 25 digits lie well inside the stretch of numbers whose nearest double this is.
  const [mantissa = '0', exponent = '0'] = value.toExponential(25).split('e');
  return decimal(BigInt(mantissa.replace('.', '')), Number(exponent) - 25);
}

/** Place of the first digit: 2 for 250, −1 for 0.25; 0 for zero. */
export function leadingPlace(a: Decimal): number {
  const { digits, exponent } = quotient(a);
  return digits === 0n ? 0 : String(digits < 0n ? -digits : digits).length - 1 + exponent;
}

/** The whole number of `10^place` nearest to `a`; halves go away from zero. */
export function roundedAt(a: Decimal, place: number): bigint {
  const { digits, exponent } = quotient(a);
  const shift = exponent - place;
  if (shift >= 0) return digits * 10n ** BigInt(shift);
  const step = 10n ** BigInt(-shift);
  const half = digits < 0n ? -step / 2n : step / 2n;
  return (digits + half) / step;
}

/** The same without a divisor: exact where there was none, else to fifty digits, of which a double feels 17. */
function quotient({ digits, exponent, divisor }: Decimal): { digits: bigint; exponent: number } {
  if (divisor === 1n) return { digits, exponent };
  const places = 50 + String(divisor).length;
  return { digits: (digits * 10n ** BigInt(places)) / divisor, exponent: exponent - places };
}
