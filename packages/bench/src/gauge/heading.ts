import { toNumber } from '../units/decimal.ts';
import { type Dimension, dimensionFacts } from '../units/dimension.ts';
import { readUnit } from '../units/unit-text.ts';
import type { ColumnSpec } from './gauge.ts';

/** What the top of a column says. */
export interface Heading {
  /** In small letters, without its unit. */
  readonly name: string;
  /** The unit as written; empty where there is none. */
  readonly unit: string;
}

/** `position (mm)`, `position [mm]`, `position / mm`, `position in mm`, `position_mm` or `position mm`. */
export function readHeading(text: string): Heading {
  const clean = text.replace(/^["'\s]+|["'\s]+$/gu, '');
  const split =
    /^(.*?)\s*[([]\s*([^)\]]*?)\s*[)\]]$/u.exec(clean) ??
    /^(.*?)\s*\/\s*(\S+)$/u.exec(clean) ??
    /^(.*?)\s+in\s+(\S+)$/u.exec(clean);
  if (split !== null) return { name: tidy(split[1]!), unit: split[2]! };
  const last = /^(.+?)[_\s]+([^_\s]+)$/u.exec(clean);
  if (last !== null && last[2] !== 'm2' && (readUnit(last[2]!).known || isDecibel(last[2]!)))
    return { name: tidy(last[1]!), unit: last[2]! };
  return { name: tidy(clean), unit: '' };
}

/** `beamRadius_x` as `beam radius x`. */
export function tidy(name: string): string {
  return name
    .replace(/([a-z])([A-Z])/gu, '$1 $2')
    .replace(/[_\s]+/gu, ' ')
    .trim()
    .toLowerCase();
}

/** From a number in a column to SI. */
export type Conversion = (value: number) => number;

const isDecibel = (unit: string): boolean => /^dBm?$/u.test(unit);

/** How a column's numbers become SI, or null where its unit does not measure what the column holds. */
export function conversionFor(unit: string, dimension: ColumnSpec['dimension']): Conversion | null {
  const read = readUnit(unit);
  if (dimension === 'reading') {
    // a fall of 3 dB halves the light whatever the meter calls full
    if (isDecibel(unit)) return (value) => 10 ** (value / 10);
    if (!read.known || unit === '') return (value) => value;
    const factor = toNumber(read.factor);
    return (value) => value * factor;
  }
  // pixels and codes are counted
  if (dimension === 'number' && /^(px|pixels?|codes?|counts?)$/u.test(unit)) return (value) => value;
  if (dimension === 'power' && unit === 'dBm') return (value) => 1e-3 * 10 ** (value / 10);
  if (dimension === 'temperature' && /^(°C|degC|C|℃)$/u.test(unit)) return (value) => value + 273.15;
  if (!read.known || !dimensionFacts[dimension].kinds.includes(read.kind)) return null;
  const factor = toNumber(read.factor);
  return (value) => value * factor;
}

/** SI units that figures are drawn in, and what they measure. */
export const drawnUnits: Readonly<Partial<Record<string, Dimension>>> = {
  m: 'length',
  rad: 'angle',
  s: 'time',
  K: 'temperature',
  W: 'power',
  A: 'current',
  V: 'voltage',
};

/**
 * The unit of a reading once it is converted: `V` for one in mV. Empty for decibels, which became shares, and where
 * none was written; one that is not known, such as counts, stays as it was.
 */
export function convertedUnit(unit: string): string {
  if (isDecibel(unit) || unit === '') return '';
  const read = readUnit(unit);
  if (!read.known) return unit;
  const measures = (dimension: Dimension): boolean => dimensionFacts[dimension].kinds.includes(read.kind);
  return Object.entries(drawnUnits).find(([, dimension]) => dimension && measures(dimension))?.[0] ?? '';
}
