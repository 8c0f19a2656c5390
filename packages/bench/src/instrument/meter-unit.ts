import type { Dimension } from '../units/dimension.ts';
import { readQuantity } from '../units/read-quantity.ts';
import type { ReadingUnit } from './reading.ts';

/** Units a device may write behind its numbers; `counts` are its own. */
export const meterUnits = [
  'W',
  'mW',
  'µW',
  'nW',
  'pW',
  'dBm',
  'V',
  'mV',
  'µV',
  'A',
  'mA',
  'µA',
  'nA',
  'pA',
  'counts',
] as const;
export type MeterUnit = (typeof meterUnits)[number];

/** What readings in this unit are counted in inside. */
export function readingUnitOf(unit: MeterUnit): ReadingUnit {
  if (unit === 'counts') return 'relative';
  return unit === 'dBm' || unit.endsWith('W') ? 'W' : unit.endsWith('V') ? 'V' : 'A';
}

const dimensionOf: Readonly<Record<'W' | 'V' | 'A', Dimension>> = { W: 'power', V: 'voltage', A: 'current' };

/**
 * How many of a unit make one of SI; a device's own counts stay what they are. A whole number, so that dividing by it gives
 * the number nearest to what was written.
 */
const parts: ReadonlyMap<MeterUnit, number> = new Map(
  meterUnits.filter((unit) => unit !== 'dBm').map((unit) => [unit, partsOf(unit)]),
);

function partsOf(unit: MeterUnit): number {
  const inside = readingUnitOf(unit);
  if (inside === 'relative' || inside === 'step') return 1;
  const read = readQuantity(`1 ${unit}`, dimensionOf[inside]);
  if (!read.ok) throw new Error(`${unit} is no unit of bench`);
  return Math.round(1 / read.value);
}

/** A device's number in SI. A photodiode in the dark may well read below nothing, so every sign is taken. */
export function fromMeter(value: number, unit: MeterUnit): number {
  if (unit === 'dBm') {
    const read = readQuantity(`${value} dBm`, 'power');
    return read.ok ? read.value : Number.NaN;
  }
  return value / (parts.get(unit) ?? Number.NaN);
}

/** The unit of this name, whichever micro sign it is written with; null if a device's word is none. */
export function meterUnitNamed(word: string): MeterUnit | null {
  const written = word.replace(/^[uμ](?=[WVA]$)/u, 'µ');
  if (/^(counts?|cts?|ADU|arb)$/iu.test(written)) return 'counts';
  const exact = meterUnits.find((unit) => unit === written);
  if (exact !== undefined) return exact;
  // `dbm` and `DBM` can mean nothing else; `mw` could be two things and stays unread
  return /^dbm$/iu.test(written) ? 'dBm' : null;
}
