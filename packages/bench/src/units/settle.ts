import type { Deviation } from './deviation.ts';
import type { Dimension } from './dimension.ts';
import { exactText } from './exact-text.ts';
import { type Misread, type QuantityRead, quote } from './quantity-read.ts';
import type { Range } from './range.ts';
import type { Term } from './term.ts';
import { writeValue } from './write.ts';

/** A value, what stands behind its `±` or `within`, and what the value cannot be. */
export interface Stated {
  readonly term: Term;
  readonly dimension: Dimension;
  readonly keyword: '±' | 'within';
  readonly deviation: Exclude<Deviation, Misread>;
  readonly range: Range;
}

/**
 * From this share of the value on, the doubt about something that cannot be negative is `positive` and not `normal`:
 * a bell a quarter as wide as its distance from zero puts one sample in 30 000 below zero. Chosen here, no source.
 */
export const positiveFrom = 0.25;

/**
 * The most that `±` may be, as a share of the value. More is no uncertainty any more: of what is above zero nine of ten
 * would lie between a fifth of the value and five times it already. What may be zero, such as a joint's loss, may be
 * small against its doubt. Chosen here, no source.
 */
const largestShare = { positive: 1, orZero: 3 } as const;

/** Ten decibels, as a natural logarithm: the most that a factor may be uncertain by. */
const largestFactor = Math.LN10;

/** Room for the last digit of sums such as 97 % + 3 %. */
const rounding = 1e-12;

/**
 * The standard uncertainty and the shape of the doubt. Hard limits are rectangular, of standard uncertainty limit/√3.
 *
 * @source JCGM 100:2008 (GUM) 4.3.7, equation (7): from memory
 */
export function settle(stated: Stated): QuantityRead | Misread {
  const { term, deviation, keyword } = stated;
  const { floor, low, high } = stated.range;
  const { value } = term;
  if (deviation.kind === 'factor') return settleFactor(stated, deviation.logarithm);
  const { size } = deviation;
  if (size === 0) return { ok: true, value, uncertainty: 0, shape: 'normal' };
  const share = size / Math.abs(value);
  if (floor !== 'none' && value === 0) return fromZero(stated, size);
  if (keyword === 'within') return settleLimits(stated, size);
  if (floor !== 'none' && share > largestShare[floor] * (1 + rounding)) {
    const most = floor === 'positive' ? quote(term.written) : `three times ${quote(term.written)}`;
    return byLimits(stated, `the uncertainty is more than ${most} itself`);
  }
  if (floor === 'none' && size > (high - low) / 2) {
    const what = `the uncertainty is more than all that is possible here`;
    return { ok: false, what, meant: [], examples: [`${term.written} ± 10 %`] };
  }
  const shape = floor !== 'none' && share > positiveFrom ? 'positive' : 'normal';
  return { ok: true, value, uncertainty: size, shape };
}

/** Decibels behind a power: the same factor up and down. */
function settleFactor({ term, keyword }: Stated, logarithm: number): QuantityRead | Misread {
  const { value } = term;
  const spread = keyword === 'within' ? logarithm / Math.sqrt(3) : logarithm;
  if (spread === 0) return { ok: true, value, uncertainty: 0, shape: 'normal' };
  if (value === 0) {
    return { ok: false, what: `a factor on ${quote(term.written)} changes nothing`, meant: [term.written] };
  }
  if (spread > largestFactor) {
    return {
      ok: false,
      what: 'the uncertainty is more than 10 dB',
      meant: [`${term.written} ${keyword} 3 dB`],
    };
  }
  // Narrow limits are as good as symmetric; wide ones are not, and keep their factor at the price of soft ends.
  const shape = keyword === 'within' && logarithm <= positiveFrom ? 'rectangular' : 'positive';
  return { ok: true, value, uncertainty: value * spread, shape };
}

/** Hard limits, if all between them is possible. */
function settleLimits(stated: Stated, limit: number): QuantityRead | Misread {
  const { term, dimension, range } = stated;
  const { value, written } = term;
  const standard = limit / Math.sqrt(3);
  const low = value - limit;
  const high = value + limit;
  const room = Math.abs(value) * rounding;
  if (range.floor === 'positive' && low <= room) {
    return byLimits(stated, `the limits of ${quote(written)} reach zero, which is not possible`);
  }
  const isLow = low < range.low - room;
  if (isLow || high > range.high + room) {
    const [end, beyond] = isLow ? ['lower', 'below'] : ['upper', 'above'];
    const bound = exactText(isLow ? range.low : range.high, dimension);
    const meant = between(Math.max(low, range.low), Math.min(high, range.high), dimension);
    return { ok: false, what: `the ${end} limit of ${quote(written)} is ${beyond} \`${bound}\``, meant };
  }
  return { ok: true, value, uncertainty: standard, shape: 'rectangular' };
}

/** How a wide doubt is said: nobody who knows so little knows more than its two ends. */
function byLimits({ term: { value }, dimension, range }: Stated, what: string): Misread {
  const examples = between(Math.max(0.1 * value, range.low), Math.min(1.9 * value, range.high), dimension);
  return { ok: false, what, meant: [], ask: 'the limits, by their middle and half their width', examples };
}

/** Something that cannot be negative and may be zero is said by its limits. */
function fromZero({ term, dimension, range }: Stated, size: number): Misread {
  const meant = between(0, Math.min(size, range.high), dimension);
  return { ok: false, what: `half of the doubt about ${quote(term.written)} lies below zero`, meant };
}

/** The same by its middle, in few digits if they will do. */
function between(low: number, high: number, dimension: Dimension): readonly string[] {
  const [middle, half] = [(low + high) / 2, (high - low) / 2];
  return [4, 6, 17].map((digits) => {
    const size =
      dimension === 'temperature'
        ? `${writeValue(half, dimension, digits, 'K')}`
        : writeValue(half, dimension, digits);
    return `${writeValue(middle, dimension, digits)} within ${size}`;
  });
}
