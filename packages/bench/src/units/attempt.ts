import { readDeviation } from './deviation.ts';
import { type Dimension, dimensionFacts } from './dimension.ts';
import { exactText } from './exact-text.ts';
import { readNumber } from './number-text.ts';
import { type Misread, type QuantityLimits, type QuantityRead, quote } from './quantity-read.ts';
import { type Range, rangeOf } from './range.ts';
import { settle } from './settle.ts';
import { readTerm, type Term } from './term.ts';
import { slippedUnits } from './unit-slip.ts';

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
  if (impossible) {
    const whole = (meant: string): string => meant + tailFor(meant, text, term);
    const slips = impossible.slips === undefined ? {} : { slips: impossible.slips.map(whole) };
    return { ...impossible, meant: impossible.meant.map(whole), ...slips };
  }
  if (sign === undefined) return { ok: true, value: term.value, uncertainty: null, shape: 'normal' };

  const keyword = sign.startsWith('within') ? 'within' : '±';
  if (more.length > 0) {
    const meant = [`${term.written} ${keyword} ${deviationText}`];
    return { ok: false, what: `${quote(text)} has two uncertainties`, meant };
  }
  const deviation = readDeviation(keyword, deviationText, term, dimension);
  if (!deviation.ok) {
    const whole = (meant: string) => `${term.written} ${keyword} ${meant}`;
    const either = deviation.either === undefined ? {} : { either: deviation.either.map(whole) };
    return { ...deviation, meant: deviation.meant.map(whole), ...either };
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

/** What stands behind the value as it would stand behind `meant`, which is the same number in another unit. */
function tailFor(meant: string, text: string, { written, unit }: Term): string {
  const at = text.indexOf(written);
  const tail = at < 0 ? '' : text.slice(at + written.length).trimEnd();
  if (tail === '' || tail.endsWith('%')) return tail;
  return tail.endsWith(unit)
    ? tail.slice(0, tail.length - unit.length) + meant.slice(written.length - unit.length)
    : '';
}

/** Within ten times of the least, a value is taken as it is written: a slip of a unit lies a thousand off. */
const nearMiss = 10;

/** A value that the dimension or the key rules out. */
function outside({ value, written, unit }: Term, dimension: Dimension, range: Range): Misread | null {
  const { name } = dimensionFacts[dimension];
  const shown = quote(written);
  const slipped = (way: 'smaller' | 'larger'): readonly string[] =>
    slippedUnits(unit, way).map((other) => `${written.slice(0, -unit.length)}${other}`);
  if (range.floor === 'positive' && value <= 0) {
    return { ok: false, what: `${shown} is not above zero`, meant: [], ask: `${name} above zero` };
  }
  if (range.floor === 'orZero' && value < 0) {
    return { ok: false, what: `${shown} is below zero`, meant: [], ask: `${name} of zero or more` };
  }
  if (value > range.high) {
    // A bare 97 is a percentage whose sign was forgotten.
    const meant = dimension === 'fraction' ? [`${written} %`] : [];
    const what = `${shown} is more than \`${exactText(range.high, dimension)}\``;
    return {
      ok: false,
      what,
      meant,
      slips: slipped('smaller'),
      ask: `${name} ${rangeText(range, dimension)}`,
    };
  }
  if (value < range.low) {
    const what = `${shown} is less than \`${exactText(range.low, dimension)}\``;
    return {
      ok: false,
      what,
      meant: [],
      // a length that falls a little short is too short, and no slip of a thousand
      slips: value * nearMiss > range.low ? [] : slipped('larger'),
      ask: `${name} ${rangeText(range, dimension)}`,
    };
  }
  return null;
}

/** `from 200 nm to 12 µm`, `above zero, up to 1 m`, `of 1 or more`. */
function rangeText({ floor, low, high }: Range, dimension: Dimension): string {
  const top = Number.isFinite(high) ? exactText(high, dimension) : null;
  if (low === 0 && floor === 'positive') return top === null ? 'above zero' : `above zero, up to ${top}`;
  const bottom = Number.isFinite(low) ? exactText(low, dimension) : null;
  if (bottom === null) return top === null ? '' : `up to ${top}`;
  return top === null ? `of ${bottom} or more` : `from ${bottom} to ${top}`;
}
