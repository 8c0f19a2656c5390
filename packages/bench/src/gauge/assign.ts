import { Refusal, type RefusalParts } from '../refusal.ts';
import { dimensionFacts } from '../units/dimension.ts';
import { readQuantity } from '../units/read-quantity.ts';
import type { ColumnSpec, Gauge, Readings, Setting, SettingSpec } from './gauge.ts';
import { conversionFor, convertedUnit, type Heading, tidy } from './heading.ts';
import { setTo } from './setting-words.ts';

/** A column as it was given, not yet in SI. */
export interface RawColumn {
  readonly heading: Heading;
  readonly values: readonly number[];
}

/** A setting as it was given: a text, such as `515 nm`. */
export interface RawSetting {
  readonly name: string;
  readonly text: string;
  /** `scan.csv:2`, `--wavelength`. */
  readonly where: string;
}

export interface RawReadings {
  /** The file, for refusals. */
  readonly where: string;
  readonly columns: readonly RawColumn[];
  readonly settings: readonly RawSetting[];
}

/** The readings by the gauge's own names and in SI, and what was given that it has no use for. */
export interface Assigned {
  readonly readings: Readings;
  /** The SI unit of what the detector reads, as far as its column says. */
  readonly detectorUnit: string;
  readonly unused: readonly string[];
}

/**
 * Finds the columns and settings a gauge asks for among what was given.
 *
 * A column that no name fits is taken for a needed one if its unit, and no other's, measures the same.
 *
 * @throws {Refusal} if one is missing, is given twice, or has a unit that measures something else
 */
export function assign(gauge: Gauge, raw: RawReadings): Assigned {
  const refusals: RefusalParts[] = [];
  const columns: Record<string, readonly number[]> = {};
  const taken = new Set<RawColumn>();
  let detectorUnit = '';
  for (const spec of gauge.columns) {
    const found = columnFor(spec, raw, gauge, taken);
    if (found === null) {
      if (spec.needed) refusals.push(missingColumn(spec, raw));
      continue;
    }
    taken.add(found);
    const convert = conversionFor(found.heading.unit, spec.dimension);
    if (convert === null) refusals.push(wrongUnit(spec, found.heading, raw.where));
    else columns[spec.name] = found.values.map(convert);
    if (spec.dimension === 'reading') detectorUnit = convertedUnit(found.heading.unit);
  }
  const settings: Record<string, Setting> = {};
  const words: Record<string, string> = {};
  const settled = new Set<string>();
  for (const spec of gauge.settings) {
    const given = settingFor(spec, raw, taken);
    if (given === null) {
      if (spec.needed) refusals.push(missingSetting(spec, raw.where));
      continue;
    }
    settled.add(given.name);
    const read = readSetting(spec, given);
    if (typeof read === 'string') words[spec.name] = read;
    else if ('what' in read) refusals.push(read);
    else settings[spec.name] = read;
  }
  if (refusals.length > 0) throw new Refusal(refusals);
  const unused = [
    ...raw.columns.filter((column) => !taken.has(column)).map(({ heading }) => heading.name),
    ...raw.settings.filter(({ name }) => !settled.has(name)).map(({ name }) => name),
  ];
  return { readings: { columns, settings, words, picture: null }, detectorUnit, unused };
}

function columnFor(
  spec: ColumnSpec,
  { columns }: RawReadings,
  gauge: Gauge,
  taken: ReadonlySet<RawColumn>,
): RawColumn | null {
  const names = namesOf(spec);
  const named = columns.find(({ heading }) => names.includes(heading.name));
  if (named !== undefined) return named;
  if (!spec.needed) return null;
  const known = [...gauge.columns, ...gauge.settings].flatMap(namesOf);
  const fitting = columns.filter(
    (column) =>
      !taken.has(column) &&
      !known.includes(column.heading.name) &&
      (spec.dimension === 'reading' || column.heading.unit !== '') &&
      conversionFor(column.heading.unit, spec.dimension) !== null,
  );
  return fitting.length === 1 ? fitting[0]! : null;
}

/** Named among the settings, or a column that says the same on every row. */
function settingFor(spec: SettingSpec, raw: RawReadings, taken: Set<RawColumn>): RawSetting | null {
  const names = namesOf(spec);
  const named = raw.settings.find(({ name }) => names.includes(tidy(name)));
  if (named !== undefined) return named;
  const column = raw.columns.find(({ heading }) => names.includes(heading.name));
  if (column === undefined || new Set(column.values).size !== 1) return null;
  taken.add(column);
  const { name, unit } = column.heading;
  return { name, text: `${column.values[0]} ${unit}`.trim(), where: `${raw.where} ${name}` };
}

function readSetting(spec: SettingSpec, given: RawSetting): Setting | string | RefusalParts {
  if (spec.dimension === 'text') return given.text.trim();
  if (spec.dimension === 'word') {
    const word = wordOf(spec, given.text);
    const choices = [...new Set(Object.values(spec.words))].map((choice) => `\`${choice}\``).join(' or ');
    return (
      word ?? { where: given.where, what: `\`${given.text}\` is no ${spec.name}`, mend: `Write ${choices}.` }
    );
  }
  const read = readQuantity(given.text, spec.dimension);
  return read.ok
    ? { value: read.value, uncertainty: read.uncertainty }
    : { where: `${given.where} ${spec.name}`, what: read.what, mend: read.mend };
}

/** The word of a gauge that a text stands for, however it is spelt; `undefined` if none. */
export const wordOf = (
  { words }: { readonly words: Readonly<Record<string, string>> },
  text: string,
): string | undefined => words[text.trim().toLowerCase().replace(/\s+/gu, '')];

const namesOf = ({ name, otherNames = [] }: ColumnSpec | SettingSpec): readonly string[] => [
  name,
  ...otherNames,
];

function missingColumn(spec: ColumnSpec, { where, columns }: RawReadings): RefusalParts {
  const there = columns.map(({ heading }) => `\`${heading.name}\``).join(', ');
  return {
    where,
    what: `there is no column \`${spec.name}\` (${spec.what})${there === '' ? '' : `; there is ${there}`}`,
    mend: `Head that column \`${exampleHeading(spec)}\`.`,
  };
}

/** A heading that is understood: `position (mm)`. */
export function exampleHeading({ name, dimension }: ColumnSpec): string {
  const unit = dimension === 'reading' ? 'mV' : usualUnits[dimension];
  return unit === undefined ? name : `${name} (${unit})`;
}

/** How a setting may be written: `635 nm`. */
export function settingExample(spec: SettingSpec): string {
  if (spec.name.startsWith('wavelength')) return '635 nm';
  switch (spec.dimension) {
    case 'text':
      return spec.example;
    case 'word':
      return Object.values(spec.words)[0]!;
    case 'fraction':
      return spec.example ?? '3 %';
    default:
      return spec.example ?? dimensionFacts[spec.dimension].examples[0]!;
  }
}

const usualUnits: Readonly<Partial<Record<string, string>>> = {
  length: 'mm',
  angle: 'mrad',
  power: 'mW',
  time: 's',
  temperature: '°C',
  current: 'µA',
  voltage: 'mV',
  resistance: 'ohm',
};

function wrongUnit(spec: ColumnSpec, { name, unit }: Heading, where: string): RefusalParts {
  const wanted = spec.dimension === 'reading' ? 'a reading' : dimensionFacts[spec.dimension].name;
  return {
    where,
    what:
      unit === ''
        ? `the column \`${name}\` has no unit`
        : `the column \`${name}\` is in \`${unit}\`, which is not ${wanted}`,
    mend: `Head it \`${exampleHeading({ ...spec, name })}\`, in the unit you read.`,
  };
}

function missingSetting(spec: SettingSpec, where: string): RefusalParts {
  return {
    where,
    what: `\`${spec.name}\` is missing (${spec.what})`,
    mend: `${setTo(spec.name, settingExample(spec))}, in your own figures.`,
  };
}
