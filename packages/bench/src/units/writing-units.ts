import { type Decimal, decimal, fromNumber, inverse, times } from './decimal.ts';
import { type Dimension, dimensions } from './dimension.ts';
import { celsiusZero } from './term.ts';
import { readUnit } from './unit-text.ts';

/** A unit people write a dimension in. */
export interface WritingUnit {
  readonly text: string;
  readonly factor: Decimal;
  /** SI value at which the written number is zero; 0 but for degrees Celsius. */
  readonly zero: number;
  /** What stands between number and unit. */
  readonly gap: '' | ' ';
}

/**
 * Units by dimension, each with the SI magnitude from which on it is used. Steps follow the bench rather than the
 * thousands: a beam is 0.82 mm and not 820 µm, a core 62.5 µm and a mirror 45°.
 */
const scales: Readonly<Record<Dimension, readonly (readonly [from: number, unit: string])[]>> = {
  length: [
    [0, 'nm'],
    [1e-6, 'µm'],
    [5e-4, 'mm'],
    [1, 'm'],
    [1000, 'km'],
  ],
  angle: [
    [0, 'µrad'],
    [1e-4, 'mrad'],
    [0.1, '°'],
  ],
  power: [
    [0, 'pW'],
    [1e-9, 'nW'],
    [1e-6, 'µW'],
    [1e-4, 'mW'],
    [1, 'W'],
    [1e3, 'kW'],
  ],
  fraction: [[0, '%']],
  number: [[0, '']],
  waves: [[0, 'waves']],
  turns: [[0, 'turns']],
  // 0.1 dB/m is 0.023 nepers of power a metre.
  attenuation: [
    [0, 'dB/km'],
    [0.023, 'dB/m'],
  ],
  loss: [[0, 'dB']],
  screwPitch: [[0, 'mm']],
  anglePerTurn: [[0, 'mrad/turn']],
  time: [
    [0, 'ns'],
    [1e-6, 'µs'],
    [1e-3, 'ms'],
    [1, 's'],
  ],
  temperature: [
    [0, 'K'],
    [200, '°C'],
  ],
  irradiance: [[0, 'W/m²']],
  radiantExposure: [[0, 'J/m²']],
  current: [
    [0, 'nA'],
    [1e-6, 'µA'],
    [1e-3, 'mA'],
    [1, 'A'],
  ],
  voltage: [
    [0, 'µV'],
    [1e-3, 'mV'],
    [1, 'V'],
  ],
  frequency: [
    [0, 'Hz'],
    [1e3, 'kHz'],
    [1e6, 'MHz'],
    [1e9, 'GHz'],
  ],
  energy: [
    [0, 'nJ'],
    [1e-6, 'µJ'],
    [1e-3, 'mJ'],
    [1, 'J'],
  ],
  resistance: [
    [0, 'Ω'],
    [1e3, 'kΩ'],
    [1e6, 'MΩ'],
  ],
  responsivity: [[0, 'A/W']],
};

/** A unit by the text people write it with, such as `nm` or `mW/cm²`. @throws {RangeError} if there is no such unit */
export function writingUnit(text: string): WritingUnit {
  if (text === '°C') return { text, factor: decimal(1), zero: celsiusZero, gap: ' ' };
  const read = readUnit(text);
  if (!read.known) throw new RangeError(`no unit: ${text}`);
  return { text, factor: read.factor, zero: 0, gap: text === '' || text === '°' ? '' : ' ' };
}

/** The scales with their units read, once: reading `W/m²` takes longer than writing a number. */
const readScales = new Map(
  dimensions.map((dimension) => [
    dimension,
    scales[dimension].map(([from, unit]) => ({ from, unit: writingUnit(unit) })),
  ]),
);
const bareNumber = writingUnit('');

/** The unit in which a value of this SI magnitude is written. Zero takes one from the middle. */
export function unitFor(magnitude: number, dimension: Dimension): WritingUnit {
  const scale = readScales.get(dimension) ?? [];
  const index = magnitude === 0 ? scale.length >> 1 : scale.findLastIndex(({ from }) => magnitude >= from);
  return scale[Math.max(0, index)]?.unit ?? bareNumber;
}

/** Every unit in which exact values of a dimension are written. */
export function exactUnits(dimension: Dimension): readonly WritingUnit[] {
  // In degrees Celsius a temperature would be rounded when its zero is added.
  if (dimension === 'temperature') return [writingUnit('K')];
  return scales[dimension].map(([, unit]) => writingUnit(unit));
}

/** The number to write before `unit` for an SI value. */
export function inUnit(value: number, { factor, zero }: WritingUnit): Decimal {
  return times(fromNumber(value - zero), inverse(factor));
}

/** The number to write before `unit` for an SI difference. */
export function differenceInUnit(difference: number, { factor }: WritingUnit): Decimal {
  return times(fromNumber(difference), inverse(factor));
}
