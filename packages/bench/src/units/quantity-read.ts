import type { Shape } from '../quantity/quantity.ts';

/** A quantity as it was written: SI. */
export interface QuantityRead {
  readonly ok: true;
  readonly value: number;
  /** Standard uncertainty; `null` where none was written. */
  readonly uncertainty: number | null;
  readonly shape: Shape;
}

/** Why a text cannot be taken. */
export interface Misread {
  readonly ok: false;
  /** With the offending text as written. */
  readonly what: string;
  /** Texts that may have been meant, most likely first; none of them is promised to be readable. */
  readonly meant: readonly string[];
  /** The same in units a thousand times off and more: for a text that has no other mistake. */
  readonly slips?: readonly string[];
  /** Texts of which each may as well have been meant; those that can be read are all offered. */
  readonly either?: readonly string[];
  /** What to ask for where the name of the dimension does not say it: "a length above zero". */
  readonly ask?: string;
  /** Better examples than the usual ones. */
  readonly examples?: readonly string[];
}

/** What one key allows beyond what its dimension does. SI. */
export interface QuantityLimits {
  /** `true`: above zero. `'orZero'`: not below zero. `false` or left out: what the dimension itself allows. */
  readonly positive?: boolean | 'orZero' | undefined;
  /** The largest value, included. */
  readonly max?: number | undefined;
  /** The smallest value, included. */
  readonly min?: number | undefined;
}

/** `text` as it is shown in a refusal: on one line, in backticks, cut where it is long. */
export function quote(text: string): string {
  const line = text.trim().replace(/[\s\p{C}`]+/gu, ' ');
  return `\`${line.length > 60 ? `${line.slice(0, 59)}…` : line}\``;
}
