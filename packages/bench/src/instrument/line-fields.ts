import type { ColumnSeparator, LineFormat } from './line-format.ts';
import { type MeterUnit, meterUnitNamed } from './meter-unit.ts';

/** One column of a line. */
export interface LineField {
  /** What the device calls it, as in `P=1.2 mW` or `"p": 1.2`. */
  readonly name: string | null;
  readonly text: string;
  readonly value: number | null;
  /** The device says that it is beyond its range. */
  readonly over: boolean;
  readonly unit: MeterUnit | null;
}

const splitters: Readonly<Record<Exclude<ColumnSeparator, 'none'>, RegExp>> = {
  tab: /\t/u,
  semicolon: /;/u,
  comma: /,/u,
  space: /\s+/u,
};

const named = /^([\p{L}_][^=:]*?)\s*[=:]\s*(.*)$/u;
const numbers = {
  point: /^([+\-−]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,5})?)\s*(.*)$/u,
  comma: /^([+\-−]?(?:\d+,?\d*|,\d+)(?:[eE][+-]?\d{1,5})?)\s*(.*)$/u,
};
/** What meters write when there is too much for them. Common practice, no source. */
const beyond = /^[+>]?(OL|O\.L|OVL?D?|OVER|OVERLOAD|OVERFLOW|INF(INITY)?)$/iu;

/** The columns of a line. A unit in a column of its own counts for the number before it, and stays a column. */
export function lineFields(
  line: string,
  { separator, decimal }: Pick<LineFormat, 'separator' | 'decimal'>,
): readonly LineField[] {
  const parts = separator === 'none' ? [line] : line.trim().split(splitters[separator]);
  const fields: LineField[] = [];
  for (const part of parts) {
    const field = fieldOf(part, decimal);
    const alone = field.value === null ? meterUnitNamed(field.text) : null;
    if (alone !== null) {
      const before = fields.findLastIndex(({ value, over }) => value !== null || over);
      const counted = fields[before];
      if (counted !== undefined && counted.unit === null) fields[before] = { ...counted, unit: alone };
    }
    fields.push(field);
  }
  return fields;
}

function fieldOf(part: string, decimal: LineFormat['decimal']): LineField {
  // braces and quotes of JSON and the like say nothing about the number in them
  const bare = part.replace(/[{}[\]"']/gu, ' ').trim();
  const [, name = null, after = bare] = named.exec(bare) ?? [];
  const text = after.trim();
  const over = beyond.test(text);
  const [, written, behind = ''] = numbers[decimal].exec(text) ?? [];
  const unit = behind === '' ? null : meterUnitNamed(behind.trim());
  // `12:01` and `12 of 30` begin with a number and are none
  const isNumber = written !== undefined && (behind === '' || unit !== null);
  const value = isNumber ? Number(written.replace(',', '.').replace('−', '-')) : null;
  return { name, text, value, over, unit: unit ?? unitOfName(name) };
}

/** The unit in a name or a heading: `power_mW`, `P (mW)`. */
export function unitOfName(name: string | null): MeterUnit | null {
  const [, word] = /[_ ([]\s*([\p{L}µμ]+)\s*[)\]]?$/u.exec(name ?? '') ?? [];
  return word === undefined ? null : meterUnitNamed(word);
}
