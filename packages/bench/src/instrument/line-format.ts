import type { MeterUnit } from './meter-unit.ts';

/** What stands between the columns of a line. `space` is any white space; `none`: a line is one column. */
export const columnSeparators = ['tab', 'semicolon', 'comma', 'space', 'none'] as const;
export type ColumnSeparator = (typeof columnSeparators)[number];

/** How a device's lines are read. */
export interface LineFormat {
  readonly separator: ColumnSeparator;
  readonly decimal: 'point' | 'comma';
  /** The column with the reading, from 0. */
  readonly column: number;
  /** What the reading is counted in where the line itself does not say. */
  readonly unit: MeterUnit;
}
