import { type Doubt, determined, type Found, type GaugeAnswer } from './answer.ts';
import type { Readings, Setting } from './gauge.ts';

/** An input of a formula and how well it is known. */
export interface Known {
  /** What its doubt comes from, for people. */
  readonly from: string;
  readonly value: number;
  /** Standard uncertainty. */
  readonly uncertainty: number;
  /** Degrees of freedom; left out: ∞. */
  readonly freedom?: number;
}

/**
 * The mean of repeated readings. From four on their own scatter says how well it is known; of fewer, the stated
 * uncertainty of one.
 */
export function meanOf(from: string, values: readonly number[], stated: number): Known {
  const n = values.length;
  const value = values.reduce((sum, x) => sum + x, 0) / n;
  if (n < 4) return { from: `${from}, as stated or assumed`, value, uncertainty: stated / Math.sqrt(n) };
  const squares = values.reduce((sum, x) => sum + (x - value) ** 2, 0);
  return {
    from: `scatter of the ${from}`,
    value,
    uncertainty: Math.sqrt(squares / (n - 1) / n),
    freedom: n - 1,
  };
}

/** A setting as an input; without a written uncertainty it has the usual one. */
export function settingAs(from: string, setting: Setting, usual: number): Known {
  return { from, value: setting.value, uncertainty: setting.uncertainty ?? usual };
}

/** An answer as a formula of independent inputs; slopes from one uncertainty below to one above. */
export function derived(
  found: Omit<Found, 'value' | 'doubts'>,
  inputs: readonly Known[],
  formula: (...values: number[]) => number,
): GaugeAnswer {
  const values = inputs.map(({ value }) => value);
  const doubts = inputs.map(({ from, value, uncertainty, freedom }, i): Doubt => {
    const rise =
      formula(...values.with(i, value + uncertainty)) - formula(...values.with(i, value - uncertainty));
    return { from, uncertainty: Math.abs(rise) / 2, ...(freedom === undefined ? {} : { freedom }) };
  });
  return determined({ ...found, value: formula(...values), doubts });
}

/** A column that the gauge needs; empty where it was left out. */
export const column = ({ columns }: Readings, name: string): readonly number[] => columns[name] ?? [];
