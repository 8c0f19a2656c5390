import { type Decimal, decibel, decimal, pi, times } from './decimal.ts';

/** What units are made of. Volt, joule, ohm and hertz reduce to these; a turn and a wave are not angles here. */
export const bases = ['W', 'A', 's', 'm', 'K', 'rad', 'turn', 'wave', 'dB', '%'] as const;
export type Base = (typeof bases)[number];

/** Powers of the bases; `{ W: 1, m: -2 }` is an irradiance. */
export type Powers = Readonly<Partial<Record<Base, number>>>;

/** One unit, as far as reading needs it. */
export interface Unit {
  readonly powers: Powers;
  /** How much of the bases one of it is. A decibel counts in nepers of power, ln(10)/10; a per cent as 1/100. */
  readonly factor: Decimal;
}

const prefixes = {
  '': 0,
  m: -3,
  µ: -6,
  n: -9,
  k: 3,
  c: -2,
  p: -12,
  f: -15,
  M: 6,
  G: 9,
  T: 12,
} as const;
type Prefix = keyof typeof prefixes;

/**
 * SI units with the prefixes a bench has use for. A megametre or a megawatt is left out on purpose: there it is
 * `mm` and `mW` with the shift key held, a factor of a billion.
 *
 * @source BIPM, The International System of Units, 9th edition (2019), tables 2, 4 and 7: from memory
 */
const prefixed: readonly (readonly [string, Powers, readonly Prefix[]])[] = [
  ['m', { m: 1 }, ['', 'm', 'µ', 'n', 'k', 'c', 'p', 'f']],
  ['W', { W: 1 }, ['', 'm', 'µ', 'n', 'k', 'p', 'f']],
  ['rad', { rad: 1 }, ['', 'm', 'µ', 'n']],
  ['s', { s: 1 }, ['', 'm', 'µ', 'n', 'p', 'f']],
  ['A', { A: 1 }, ['', 'm', 'µ', 'n', 'p', 'f']],
  ['V', { W: 1, A: -1 }, ['', 'm', 'µ', 'n', 'k']],
  ['Hz', { s: -1 }, ['', 'm', 'k', 'M', 'G', 'T']],
  ['J', { W: 1, s: 1 }, ['', 'm', 'µ', 'n', 'k', 'p', 'f']],
  ['Ω', { W: 1, A: -2 }, ['', 'm', 'µ', 'k', 'M', 'G']],
  ['ohm', { W: 1, A: -2 }, ['', 'm', 'µ', 'k', 'M', 'G']],
  ['K', { K: 1 }, ['', 'm', 'µ']],
];

const inch = decimal(254, -4);

/**
 * Units that take no prefix.
 *
 * @source inch 25.4 mm exactly, foot 12 inches (international yard and pound agreement, 1959): from memory;
 *   minute, hour, degree, arc minute and arc second: BIPM, The International System of Units, 9th edition, table 8,
 *   from memory; ångström 0.1 nm: from memory
 */
const plainUnits: Readonly<Record<string, Unit>> = {
  Å: { powers: { m: 1 }, factor: decimal(1, -10) },
  in: { powers: { m: 1 }, factor: inch },
  '"': { powers: { m: 1 }, factor: inch },
  thou: { powers: { m: 1 }, factor: decimal(254, -7) },
  ft: { powers: { m: 1 }, factor: times(inch, decimal(12)) },
  min: { powers: { s: 1 }, factor: decimal(60) },
  h: { powers: { s: 1 }, factor: decimal(3600) },
  '°': { powers: { rad: 1 }, factor: times(pi, decimal(1, 0, 180)) },
  deg: { powers: { rad: 1 }, factor: times(pi, decimal(1, 0, 180)) },
  arcmin: { powers: { rad: 1 }, factor: times(pi, decimal(1, 0, 180 * 60)) },
  arcsec: { powers: { rad: 1 }, factor: times(pi, decimal(1, 0, 180 * 3600)) },
  turn: { powers: { turn: 1 }, factor: decimal(1) },
  turns: { powers: { turn: 1 }, factor: decimal(1) },
  wave: { powers: { wave: 1 }, factor: decimal(1) },
  waves: { powers: { wave: 1 }, factor: decimal(1) },
  λ: { powers: { wave: 1 }, factor: decimal(1) },
  dB: { powers: { dB: 1 }, factor: decibel },
  '%': { powers: { '%': 1 }, factor: decimal(1, -2) },
};

/** Every unit by its symbol. Both micro signs and `u` stand for 10⁻⁶. */
export const units: ReadonlyMap<string, Unit> = new Map([
  ...prefixed.flatMap(([symbol, powers, allowed]) =>
    allowed.flatMap((prefix) => {
      const unit: Unit = { powers, factor: decimal(1, prefixes[prefix]) };
      return (prefix === 'µ' ? ['µ', 'μ', 'u'] : [prefix]).map((p) => [`${p}${symbol}`, unit] as const);
    }),
  ),
  ...Object.entries(plainUnits),
]);
