import { attempt } from './attempt.ts';
import { toNumber } from './decimal.ts';
import { type Dimension, dimensionFacts } from './dimension.ts';
import { exactText } from './exact-text.ts';
import { readNumber } from './number-text.ts';
import type { Misread, QuantityLimits, QuantityRead } from './quantity-read.ts';
import { repairs } from './repairs.ts';
import { brokenNumber } from './term.ts';

/** What one key allows, and how one would write it. */
export interface QuantityOptions extends QuantityLimits {
  /** Shown where the text gives nothing to go by: `635 nm` for a wavelength. A bare number is taken to be in its unit. */
  readonly example?: string | undefined;
}

/** So many texts are tried before an example has to do. */
const patience = 60;
/** Longer texts are not searched for what was meant. */
const longestMeant = 80;

/** Numbers that somebody may have written for want of the right unit. */
const smallestWritten = 1e-15;
const largestWritten = 1e15;

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
  const read = (candidate: string): QuantityRead | Misread => attempt(candidate, dimension, options);
  const written = text.length > longestMeant ? '' : text.trim();
  if (eitherComma.test(written)) {
    const decimal = nearest(written.replace(',', '.'), read).found;
    const thousands = nearest(written.replace(',', ''), read).found;
    if (decimal !== null && thousands !== null) {
      return `Write \`${decimal}\`, or \`${thousands}\` if the comma marks thousands.`;
    }
    const only = decimal ?? thousands;
    if (only !== null) return `Write \`${only}\`.`;
  }
  const [one, other] = [...new Set(misread.either)].filter((candidate) => read(candidate).ok);
  if (one !== undefined)
    return other === undefined ? `Write \`${one}\`.` : `Write \`${one}\`, or \`${other}\`.`;
  const nearby = nearest(written, read);
  const found = nearby.found ?? misread.slips?.find((slip) => read(slip).ok) ?? null;
  if (found !== null) return `Write \`${found}\`.`;
  const { name, examples: usual } = dimensionFacts[dimension];
  const examples = [...(options.example === undefined ? [] : [options.example]), ...usual];
  const candidates = [
    ...(misread.examples ?? []),
    // what was read, and is out of range, keeps its unit: another one would make it a thousand times as large
    ...(misread.slips === undefined
      ? nearby.tried.flatMap((candidate) => inUsualUnit(candidate, examples))
      : []),
    ...examples,
    ...[options.max, options.min]
      .filter((limit) => limit !== undefined)
      .map((limit) => exactText(limit, dimension)),
  ];
  const example = candidates.find((candidate) => read(candidate).ok) ?? usual[0];
  return `Write ${misread.ask ?? name}, such as \`${example}\`.`;
}

/** The readable text that the fewest repairs lead to, `null` if there is none near; and all that was tried. */
function nearest(
  text: string,
  read: (candidate: string) => QuantityRead | Misread,
): { readonly found: string | null; readonly tried: readonly string[] } {
  const tried = new Set([text]);
  // A set hands out what is added while it is walked: this goes breadth first, and never twice.
  for (const candidate of tried) {
    const result = read(candidate);
    if (result.ok) return { found: candidate, tried: [] };
    if (tried.size > patience) break;
    const next = [...result.meant, ...repairs.flatMap((repair) => repair(candidate))];
    // Some repairs write a unit twice; repaired again and again, nonsense would grow without end.
    for (const text of next) if (text.length <= 2 * longestMeant) tried.add(text);
  }
  return { found: null, tried: [...tried] };
}

/** The number at the start of `text` with the units of the examples behind it, with and without its tail. */
function inUsualUnit(text: string, examples: readonly string[]): readonly string[] {
  const found = readNumber(text.normalize('NFC'));
  if (!found || brokenNumber(text, found.rest) !== null) return [];
  // `1e-300 W` is no slip of `1e-300 dBm`
  const size = Math.abs(toNumber(found.number));
  if (size !== 0 && (size < smallestWritten || size > largestWritten)) return [];
  const tail = /(?:±|\+\/[-−]|\bwithin\b).*$/u.exec(found.rest)?.[0] ?? '';
  const units = examples.map((example) => readNumber(example)?.rest ?? '');
  return units.flatMap((unit) => [
    `${found.written} ${unit} ${tail}`.trim(),
    `${found.written} ${unit}`.trim(),
  ]);
}
