import { times, toNumber } from './decimal.ts';
import { type Dimension, dimensionFacts } from './dimension.ts';
import { readNumber } from './number-text.ts';
import { type Misread, quote } from './quantity-read.ts';
import { brokenNumber, mismatch, type Term, unknownUnit } from './term.ts';
import { readUnit } from './unit-text.ts';

/** How far a value may be off: by an SI amount, or by a factor given as its natural logarithm. */
export type Deviation =
  | { readonly ok: true; readonly kind: 'amount'; readonly size: number }
  | { readonly ok: true; readonly kind: 'factor'; readonly logarithm: number };

/**
 * What stands behind `±` or `within`.
 *
 * `%` is a share of the value, except behind a value that is itself in per cent: `97 % ± 1 %` is 96 % to 98 %, as
 * people say it. `dB` behind a power is a factor.
 */
export function readDeviation(
  mark: string,
  text: string,
  of: Term,
  dimension: Dimension,
): Deviation | Misread {
  const found = readNumber(text.trim());
  if (!found) {
    const what =
      text.trim() === '' ? `nothing stands behind ${quote(mark)}` : `${quote(text)} is no uncertainty`;
    return misread(what, ['10 %']);
  }
  const broken = brokenNumber(text, found.rest);
  if (broken !== null) return misread(broken, []);
  const withUnit = `${found.written} ${unitOfSteps(of)}`.trim();
  if (found.number.digits < 0n) {
    return misread(`the uncertainty ${quote(text)} is below zero`, [text.trim().slice(1), withUnit.slice(1)]);
  }
  const read = readUnit(dimension === 'temperature' && found.rest === '°C' ? 'K' : found.rest);
  if (!read.known) return misread(unknownUnit(text, read.piece), [withUnit, '10 %']);
  const size = toNumber(times(found.number, read.factor));
  if (read.kind === '%') return readShare(size, of, dimension);
  if (read.kind === 'dB' && dimension === 'power') return { ok: true, kind: 'factor', logarithm: size };
  if (read.kind === '' && of.unit !== '') {
    const share = `${found.written} %`;
    // nobody knows anything on a bench to a tenth of a per cent, and many mean per cent
    const either = size >= 1 ? [share, withUnit] : [withUnit, share];
    return {
      ...misread(`the uncertainty ${quote(text)} has no unit`, [withUnit, '10 %']),
      either: size >= 0.3 ? either : [withUnit],
    };
  }
  if (!dimensionFacts[dimension].kinds.includes(read.kind)) {
    return misread(mismatch(text, read.kind, dimension), [withUnit, '10 %']);
  }
  return { ok: true, kind: 'amount', size };
}

function readShare(share: number, of: Term, dimension: Dimension): Deviation | Misread {
  switch (of.scale) {
    case 'percent':
      // A point more of the light lost is a point less of the light left, of which the loss is −ln.
      return { ok: true, kind: 'amount', size: dimension === 'loss' ? share * Math.exp(of.value) : share };
    case 'celsius':
      return misread(`a share of ${quote(of.written)} depends on where zero is`, ['1 °C']);
    case 'linear':
    case 'decibel':
    case 'thread':
      if (of.value === 0)
        return misread(`a share of ${quote(of.written)} is nothing`, [`0.1 ${of.unit}`.trim()]);
      return { ok: true, kind: 'amount', size: Math.abs(of.value) * share };
  }
}

/** The unit in which one would say how far the written number may be off. */
function unitOfSteps(of: Term): string {
  switch (of.scale) {
    case 'decibel':
      return 'dB';
    case 'thread':
      return 'mm';
    case 'linear':
    case 'percent':
    case 'celsius':
      return of.unit;
  }
}

/** `meant` replaces the text behind the mark only; the caller puts the value before it. */
function misread(what: string, meant: readonly string[]): Misread {
  return { ok: false, what, meant };
}
