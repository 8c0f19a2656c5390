import { dimensions } from './dimension.ts';
import { exactUnits } from './writing-units.ts';

const units = [
  ...dimensions.flatMap((dimension) => exactUnits(dimension).map(({ text }) => text)),
  '°C',
].filter((unit) => unit !== '');
const gap = new RegExp(`(?<=\\d) (?=(?:${units.join('|')})(?![\\p{L}/²]))`, 'gu');

/**
 * A text for a screen or paper, its lines broken anywhere but between a number and its unit or at `±`: those gaps are
 * no-break spaces, as typesetters do it.
 *
 * @source BIPM, The International System of Units (SI Brochure), 9th edition, 5.4.3: a space stands between number and
 *   unit; that no line breaks there: common practice, no source
 */
export function unbroken(text: string): string {
  return text.replace(gap, '\u00a0').replaceAll(' ± ', '\u00a0±\u00a0');
}
