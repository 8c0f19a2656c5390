import { readDeviation } from './deviation.ts';
import { type Dimension, dimensionFacts } from './dimension.ts';
import { exactText } from './exact-text.ts';
import { readNumber } from './number-text.ts';
import { type Misread, type QuantityLimits, type QuantityRead, quote } from './quantity-read.ts';
import { type Range, rangeOf } from './range.ts';
import { settle } from './settle.ts';
import { readTerm, type Term } from './term.ts';

/** Longer texts are no quantity, and are not searched for one. */
const longestText = 200;
/** Beyond these magnitudes (SI) the fourth powers that optics takes would overflow or vanish. */
const largest = 1e60;
const smallest = 1e-60;

/** `±`, its spellings on a keyboard, or `within`. */
const mark = /\s*(±|\+\/[-−]|\+[-−]|\bwithin\b(?:\s*±)?)\s*/u;

/** Reads a text, or says why not; looks for no mend. */
export function attempt(text: string, dimension: Dimension, limits: QuantityLimits): QuantityRead | Misread {
  if (text.length > longestText) {
    return { ok: false, what: `${quote(text)} goes on for ${text.length} characters`, meant: [] };
  }
  // Ångström, ohm and kelvin signs become the letters they stand for; the two micro signs stay apart.
  const [valueText = '', sign, deviationText = '', ...more] = text.normalize('NFC').split(mark);
  if (sign !== undefined && valueText === '') {
    return { ok: false, what: `nothing stands before ${quote(sign)}`, meant: [] };
  }
  const term = readTerm(valueText, dimension);
  if (!term.ok) return term;
  const range = rangeOf(dimension, limits);
  const impossible = tooOdd(term.value, term.written) ?? outside(term, dimension, range);
  if (impossible) return impossible;
  if (sign === undefined) return { ok: true, value: term.value, uncertainty: null, shape: 'normal' };

  const keyword = sign.startsWith('within') ? 'within' : '±';
  if (more.length > 0) {
    const meant = [`${term.written} ${keyword} ${deviationText}`];
    return { ok: false, what: `${quote(text)} has two uncertainties`, meant };
  }
  const deviation = readDeviation(keyword, deviationText, term, dimension);
  if (!deviation.ok) {
    return { ...deviation, meant: deviation.meant.map((meant) => `${term.written} ${keyword} ${meant}`) };
  }
  const size = deviation.kind === 'amount' ? deviation.size : deviation.logarithm;
  return tooOdd(size, deviationText) ?? settle({ term, dimension, keyword, deviation, range });
}

/** Numbers that are written as if they were not zero and yet cannot be computed with. */
function tooOdd(value: number, written: string): Misread | null {
  const size = Math.abs(value);
  const isZero = value === 0 && readNumber(written)?.number.digits === 0n;
  if (isZero || (size >= smallest && size <= largest)) return null;
  const way = size < smallest ? 'small' : 'large';
  return { ok: false, what: `${quote(written)} is too ${way} to compute with`, meant: [] };
}

/** A value that the dimension or the key rules out. */
function outside({ value, written }: Term, dimension: Dimension, range: Range): Misread | null {
  const { name } = dimensionFacts[dimension];
  const shown = quote(written);
  if (range.floor === 'positive' && value <= 0) {
    return { ok: false, what: `${shown} is not above zero`, meant: [], ask: `${name} above zero` };
  }
  if (range.floor === 'orZero' && value < 0) {
    return { ok: false, what: `${shown} is below zero`, meant: [], ask: `${name} of zero or more` };
  }
  if (value > range.high) {
    const allowed = exactText(range.high, dimension);
    // A bare 97 is a percentage whose sign was forgotten.
    const meant = dimension === 'fraction' ? [`${written} %`] : [];
    return { ok: false, what: `${shown} is more than \`${allowed}\``, meant, allowed };
  }
  if (value < range.low) {
    const allowed = exactText(range.low, dimension);
    return { ok: false, what: `${shown} is less than \`${allowed}\``, meant: [], allowed };
  }
  return null;
}
