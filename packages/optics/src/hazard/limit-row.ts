import { type ClosedRange, holds, holdsTime, type TimeRange } from './closed-range.ts';
import type { Basis } from './evidence.ts';

/** What a limit protects, and from what. Exposures of several wavelengths add up only within one of these. */
export type Harm =
  | 'heat on the retina'
  | 'photochemistry on the retina'
  | 'front of the eye, ultraviolet'
  | 'front of the eye, infrared'
  | 'skin';

/** Correction factors of the tables of limits, by their symbols there. */
export type FactorSymbol = 'C_A' | 'C_B' | 'C_C' | 'C_E';

/** One cell of a table of limits: H = coefficient · timeᵉˣᵖᵒⁿᵉⁿᵗ · factors, J/m². An irradiance has the exponent 1. */
export interface LimitRow {
  /** nm. */
  readonly band: ClosedRange;
  /** s. */
  readonly time: TimeRange;
  readonly coefficient: number;
  readonly exponent: number;
  readonly factors: readonly FactorSymbol[];
  readonly harm: Harm;
  /** Diameter, m, of the stop that belongs to this row, where it is not that of the band. */
  readonly ownStopDiameter?: number;
  /** As people write it: `18 t^0.75 C_A C_E J/m²`. */
  readonly formula: string;
  readonly basis: Basis;
}

/** The part of a row that its table prints once for many. */
export interface RowFrame {
  readonly band: readonly [number, number];
  readonly harm: Harm;
  readonly basis: Basis;
  readonly factors?: readonly FactorSymbol[];
  readonly ownStopDiameter?: number;
}

/** A row that limits the radiant exposure: coefficient · t^exponent, J/m². */
export function doseRow(
  frame: RowFrame,
  time: TimeRange,
  coefficient: number,
  exponent: 0 | 0.25 | 0.75 = 0,
): LimitRow {
  const power = exponent === 0 ? [] : [`t^${exponent}`];
  return rowOf(frame, time, coefficient, exponent, [...power, ...(frame.factors ?? []), 'J/m²']);
}

/** A row that limits the irradiance, W/m². */
export function irradianceRow(frame: RowFrame, time: TimeRange, coefficient: number): LimitRow {
  return rowOf(frame, time, coefficient, 1, [...(frame.factors ?? []), 'W/m²']);
}

function rowOf(
  { band: [from, to], factors = [], ...frame }: RowFrame,
  time: TimeRange,
  coefficient: number,
  exponent: number,
  words: readonly string[],
): LimitRow {
  return {
    ...frame,
    band: { from, to },
    time,
    coefficient,
    exponent,
    factors,
    formula: [printed(coefficient), ...words].join(' '),
  };
}

/** As tables print numbers: 0.005 becomes 5e-3, 11000 becomes 1.1e4. */
function printed(value: number): string {
  return value >= 0.1 && value < 1e4 ? `${value}` : value.toExponential().replace('e+', 'e');
}

/** From one time to another, both s; the ends belong to it. */
export const between = (from: number, to: number): TimeRange => ({ from, to });

/** The rows that apply at a wavelength (nm) and a time (s): two or more on a shared boundary. */
export function rowsAt(rows: readonly LimitRow[], nm: number, time: number): readonly LimitRow[] {
  return rows.filter((row) => holds(row.band, nm) && holdsTime(row.time, time));
}
