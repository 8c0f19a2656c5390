import { readDeviation } from './deviation.ts';
import { type Dimension, dimensionFacts, type Floor } from './dimension.ts';
import { exactText } from './exact-text.ts';
import { type Misread, type QuantityLimits, type QuantityRead, quote } from './quantity-read.ts';
import { settle } from './settle.ts';
import { readTerm, type Term } from './term.ts';

/** Longer texts are no quantity, and are not searched for one. */
const longestText = 200;
/** Beyond these magnitudes (SI) the fourth powers that optics takes would overflow or vanish. */
const largest = 1e60;
const smallest = 1e-60;

/** `±`, its spellings on a keyboard, or `within`. */
const mark = /\s*(±|\+\/[-−]|\+[-−](?!\d)|\bwithin\b(?:\s*±)?)\s*/u;

/** Reads a text, or says why not; looks for no mend. */
export function attempt(text: string, dimension: Dimension, limits: QuantityLimits): QuantityRead | Misread {
  if (text.length > longestText) {
    return { ok: false, what: `${quote(text)} goes on for ${text.length} characters`, meant: [] };
  }
  // Ångström, ohm and kelvin signs become the letters they stand for; the two micro signs stay apart.
  const [valueText = '', sign, deviationText = '', ...more] = text.normalize('NFC').split(mark);
  const term = readTerm(valueText, dimension);
  if (!term.ok) return term;
  const floor = floorOf(dimension, limits);
  const impossible = tooOdd(term.value, term.written) ?? outside(term, dimension, floor, limits);
  if (impossible) return impossible;
  if (sign === undefined) return { ok: true, value: term.value, uncertainty: null, shape: 'normal' };

  const keyword = sign.startsWith('within') ? 'within' : '±';
  if (more.length > 0) {
    const meant = [`${term.written} ${keyword} ${deviationText}`];
    return { ok: false, what: `${quote(text)} has two uncertainties`, meant };
  }
  const deviation = readDeviation(deviationText, term, dimension);
  if (!deviation.ok) {
    return { ...deviation, meant: deviation.meant.map((meant) => `${term.written} ${keyword} ${meant}`) };
  }
  const size = deviation.kind === 'amount' ? deviation.size : deviation.logarithm;
  return tooOdd(size, deviationText) ?? settle({ term, dimension, keyword, deviation, floor });
}

/** What the dimension and the key allow, whichever is stricter. */
function floorOf(dimension: Dimension, { positive }: QuantityLimits): Floor {
  const own = dimensionFacts[dimension].floor;
  if (own === 'positive' || positive === true) return 'positive';
  return own === 'orZero' || positive === 'orZero' ? 'orZero' : 'none';
}

/** Numbers that are written as if they were not zero and yet cannot be computed with. */
function tooOdd(value: number, written: string): Misread | null {
  if (Number.isNaN(value) || Math.abs(value) > largest)
    return { ok: false, what: `${quote(written)} is too large to compute with`, meant: [] };
  const isZero = value === 0 && !/[1-9]/u.test(written.replace(/[eE].*$/u, ''));
  if (Math.abs(value) < smallest && !isZero)
    return { ok: false, what: `${quote(written)} is too small to compute with`, meant: [] };
  return null;
}

/** A value that the dimension or the key rules out. */
function outside(
  { value, written }: Term,
  dimension: Dimension,
  floor: Floor,
  limits: QuantityLimits,
): Misread | null {
  const refused = (what: string, ...meant: string[]): Misread => ({
    ok: false,
    what: `${quote(written)} ${what}`,
    meant,
  });
  if (floor === 'positive' && value <= 0) return refused('is not above zero');
  if (floor === 'orZero' && value < 0) return refused('is below zero');
  const max = Math.min(limits.max ?? Infinity, dimensionFacts[dimension].ceiling ?? Infinity);
  if (value > max) {
    const largestText = exactText(max, dimension);
    return refused(
      `is more than \`${largestText}\``,
      ...(dimension === 'fraction' ? [`${written} %`] : []),
      largestText,
    );
  }
  const min = limits.min ?? -Infinity;
  if (value < min) {
    const least = exactText(min, dimension);
    return refused(`is less than \`${least}\``, least);
  }
  return null;
}
