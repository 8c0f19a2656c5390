import { type Decimal, decimal, power, times } from './decimal.ts';
import { fromSuperscript, readWhole } from './number-text.ts';
import { bases, type Powers, units } from './unit-table.ts';

/** A unit as it was written, or the first piece of it that nobody knows. */
export type UnitText =
  | { readonly known: true; readonly kind: string; readonly factor: Decimal }
  | { readonly known: false; readonly piece: string };

const factorAtStart =
  /^(\s*[·⋅*]\s*|\s*\/\s*|\s+per\s+|\s+)?([^\s\d·⋅*/^+\-−⁺⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)(?:\^?([+\-−]?\d)(?!\d)|([⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]))?/u;

/**
 * A product of units: `mm`, `mW/cm^2`, `W·m^-2`, `W m⁻²`, `mrad/turn`, `dB per km`, `/m`. A stroke divides by the one
 * unit behind it. Empty text is the bare number.
 */
export function readUnit(text: string): UnitText {
  let powers: Powers = {};
  let factor = decimal(1);
  let rest = text.trim().replace(/^(?:1\s*)?(?=\/|per\s)/u, ' ');
  while (rest !== '') {
    const found = factorAtStart.exec(rest);
    const symbol = found?.[2] ?? '';
    const unit = units.get(symbol);
    if (!found || !unit) return { known: false, piece: symbol || rest };
    const [written, joint = '', , plainPower, superscript] = found;
    const exponent = readWhole(plainPower ?? fromSuperscript(superscript ?? '1'));
    const signed = /\/|per/u.test(joint) ? -exponent : exponent;
    factor = times(factor, power(unit.factor, signed));
    powers = product(powers, unit.powers, signed);
    rest = rest.slice(written.length);
  }
  return { known: true, kind: kindOf(powers), factor };
}

function product(a: Powers, b: Powers, exponent: number): Powers {
  const result: Partial<Record<(typeof bases)[number], number>> = { ...a };
  for (const base of bases) {
    const sum = (a[base] ?? 0) + (b[base] ?? 0) * exponent;
    if (sum !== 0) result[base] = sum;
    else delete result[base];
  }
  return result;
}

/** One name for the same powers however they were written: `W·m^-2`; empty for a bare number. */
export function kindOf(powers: Powers): string {
  return bases
    .filter((base) => powers[base] !== undefined && powers[base] !== 0)
    .map((base) => (powers[base] === 1 ? base : `${base}^${powers[base]}`))
    .join('·');
}
