import { lineFields } from './line-fields.ts';
import type { LineFormat } from './line-format.ts';
import { readingUnitOf } from './meter-unit.ts';
import { readLine } from './read-line.ts';
import { readingWords } from './reading-words.ts';

/** A line of a device as its format takes it apart. */
export interface PreviewedLine {
  /** The columns as they stand in it. */
  readonly columns: readonly string[];
  /** What is read off it; null: nothing. */
  readonly reading: string | null;
}

/** Sample lines with what a format makes of them. */
export function linePreview(lines: readonly string[], format: LineFormat): readonly PreviewedLine[] {
  return lines.map((line) => {
    const said = readLine(line, format);
    const reading =
      said === null || said.kind === 'nothing'
        ? null
        : said.kind === 'over'
          ? 'too much for it'
          : readingWords(said.value, readingUnitOf(format.unit));
    return {
      columns: lineFields(line, format).map(({ name, text }) => (name === null ? text : `${name} ${text}`)),
      reading,
    };
  });
}

/** As many columns as the widest of the lines has, and as the format counts on. */
export const columnCount = (lines: readonly PreviewedLine[], { column }: LineFormat): number =>
  Math.max(column + 1, ...lines.map(({ columns }) => columns.length));
