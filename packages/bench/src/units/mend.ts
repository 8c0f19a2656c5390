import { attempt } from './attempt.ts';
import { type Dimension, dimensionFacts } from './dimension.ts';
import { exactText } from './exact-text.ts';
import { readNumber } from './number-text.ts';
import type { Misread, QuantityLimits } from './quantity-read.ts';
import { repairs } from './repairs.ts';

/** What one key allows, and how one would write it. */
export interface QuantityOptions extends QuantityLimits {
  /** Shown where the text gives nothing to go by: `635 nm` for a wavelength. A bare number is taken to be in its unit. */
  readonly example?: string | undefined;
}

/** So many texts are tried before an example has to do. */
const patience = 60;
/** Longer texts are not searched for what was meant. */
const longestMeant = 80;

const eitherComma = /^\D*[1-9]\d{0,2},\d{3}(?![\d,])/u;

/**
 * The one change that works: nothing is offered that was not read first. What was probably meant comes first, then the
 * number as it stands in the usual unit, then an example. Only a comma that may be either leaves the choice open.
 */
export function mendFor(
  text: string,
  misread: Misread,
  dimension: Dimension,
  options: QuantityOptions,
): string {
  const works = (candidate: string): boolean => attempt(candidate, dimension, options).ok;
  const written = text.length > longestMeant ? '' : text.trim();
  if (eitherComma.test(written)) {
    const decimal = nearest(written.replace(',', '.'), works);
    const thousands = nearest(written.replace(',', ''), works);
    if (decimal !== null && thousands !== null) {
      return `Write \`${decimal}\`, or \`${thousands}\` if the comma marks thousands.`;
    }
  }
  const meant = misread.meant.find(works) ?? nearest(written, works);
  if (meant !== null) return `Write \`${meant}\`.`;
  const { name, examples } = dimensionFacts[dimension];
  const all = options.example === undefined ? examples : [options.example, ...examples];
  const limits = [options.max, options.min].filter((limit) => limit !== undefined);
  const candidates = [
    ...inUsualUnit(written, all),
    ...all,
    ...limits.map((limit) => exactText(limit, dimension)),
  ];
  return `Write ${name}, such as \`${candidates.find(works) ?? examples[0]}\`.`;
}

/** The readable text that the fewest repairs lead to; `null` if there is none near. */
function nearest(text: string, works: (candidate: string) => boolean): string | null {
  const seen = new Set([text]);
  for (const candidate of seen) {
    if (works(candidate)) return candidate;
    if (seen.size > patience) return null;
    // A set hands out what is added while it is walked: this goes breadth first, and never twice.
    for (const repair of repairs) for (const next of repair(candidate)) seen.add(next);
  }
  return null;
}

/** The number at the start of `text` with the units of the examples behind it, with and without its tail. */
function inUsualUnit(text: string, examples: readonly string[]): readonly string[] {
  const found = readNumber(text.normalize('NFC'));
  if (!found) return [];
  const tail = /(?:±|\+\/[-−]|\bwithin\b).*$/u.exec(found.rest)?.[0] ?? '';
  const units = examples.map((example) => readNumber(example)?.rest ?? '');
  return units.flatMap((unit) => [
    `${found.written} ${unit} ${tail}`.trim(),
    `${found.written} ${unit}`.trim(),
  ]);
}
