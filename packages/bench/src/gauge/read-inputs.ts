import { Refusal } from '../refusal.ts';
import type { RawColumn, RawReadings, RawSetting } from './assign.ts';
import { readHeading } from './heading.ts';

/** Readings from JSON, the picture's file if one is named, and the kind of gauge if one is. */
export interface InputsRead extends RawReadings {
  readonly pictureFile: string | null;
  readonly kind: string | null;
}

/**
 * Readings as JSON: an object of lists and numbers whose names end in their SI unit, `{ "positions_m": [ … ], "power":
 * [ … ], "wavelength_m": 5.15e-7 }`; or an object that holds such a one as `inputs`.
 *
 * @throws {Refusal} if it is no JSON, no such object, or the lists are not all as long
 */
export function readInputs(text: string, file: string): InputsRead {
  const whole = parsed(text, file);
  const kind = typeof whole.kind === 'string' ? whole.kind : null;
  const inputs = isObject(whole.inputs) ? whole.inputs : whole;
  const columns: RawColumn[] = [];
  const settings: RawSetting[] = [];
  for (const [key, value] of Object.entries(inputs)) {
    const heading = readHeading(key);
    if (Array.isArray(value)) columns.push({ heading, values: listOf(value, key, file) });
    else if (typeof value === 'number')
      settings.push({ name: heading.name, text: `${value} ${heading.unit}`.trim(), where: file });
    else if (typeof value === 'string' && key !== 'file')
      settings.push({ name: heading.name, text: value, where: file });
  }
  const lengths = new Set(columns.map(({ values }) => values.length));
  if (lengths.size > 1) {
    throw new Refusal({
      where: file,
      what: `the lists are of different lengths (${[...lengths].join(', ')})`,
      mend: 'Give every list one number for each reading.',
    });
  }
  const pictureFile = typeof inputs.file === 'string' ? inputs.file : null;
  return { where: file, columns, settings, pictureFile, kind };
}

function listOf(value: readonly unknown[], key: string, file: string): readonly number[] {
  const bad = value.findIndex((one) => typeof one !== 'number' || !Number.isFinite(one));
  if (bad < 0) return value as readonly number[];
  throw new Refusal({
    where: `${file} ${key}[${bad}]`,
    what: `\`${String(value[bad]).slice(0, 40)}\` is no number`,
    mend: 'Give plain numbers in SI units.',
  });
}

function parsed(text: string, file: string): Record<string, unknown> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw new Refusal({
      where: file,
      what: `this is no JSON (${error instanceof Error ? error.message : 'unreadable'})`,
      mend: 'Give an object such as `{ "positions_m": [0, 1e-4], "power": [0, 1] }`, or a table with headings.',
    });
  }
  if (isObject(value)) return value;
  throw new Refusal({
    where: file,
    what: 'this JSON is no object of readings',
    mend: 'Give an object such as `{ "positions_m": [0, 1e-4], "power": [0, 1] }`.',
  });
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
