import {
  type Dimension,
  dimensions,
  type QuantityOptions,
  readQuantity,
} from '../../packages/bench/src/index.ts';
import { type Chance, chanceFrom } from './chance.ts';

/** What a run of quantities came to. */
export interface FuzzedUnits {
  readonly runs: number;
  readonly seed: number;
  readonly read: number;
  readonly refused: number;
  readonly slowestMilliseconds: number;
}

/** A quantity takes a fraction of a millisecond; this leaves room for a busy machine, not for a search without end. */
const longestMilliseconds = 1000;

const numbers = [
  ...[
    '1',
    '0',
    '6.2',
    '-3',
    '1/4',
    '1 1/2',
    '550',
    '1,5',
    '1,550',
    '1 550',
    '.5',
    '2.3e-3',
    '2.3×10⁻³',
    '1e400',
    '0.1',
    '97',
  ],
];
const unitTexts = [
  ...[
    'mm',
    'µm',
    'μm',
    'um',
    'nm',
    'm',
    'in',
    '"',
    'thou',
    'Å',
    'mW',
    'W',
    'dBm',
    'dB',
    'dB/km',
    '%',
    '°',
    'deg',
    'mrad',
    '',
  ],
  ...[
    'mrad/turn',
    'tpi',
    'waves',
    'λ',
    'turns',
    'mW/cm^2',
    'W·m⁻²',
    '°C',
    'K',
    'kΩ',
    'A/W',
    'Hz',
    's',
    'MM',
    'micron',
    'inches',
  ],
];
const marks = ['±', '+/-', '+-', 'within', 'within ±'];
const pieces = [
  ...[
    ...numbers,
    ...unitTexts,
    ...marks,
    '1/4-80',
    'M6x',
    '#8-32',
    '-',
    '−',
    '–',
    '+',
    ',',
    '.',
    '/',
    '^',
    '·',
    '(',
    ')',
  ],
  ...['~', 'to', 'per', 'NaN', 'Infinity'],
];
const glue = ['', '', ' ', ' ', '\u00a0', '\u202f', '\t'];
const everyOption: readonly QuantityOptions[] = [
  {},
  {},
  { positive: true },
  { positive: 'orZero' },
  { min: 0, max: 0.01 },
  { min: 200e-9, max: 12e-6, positive: true, example: '520 nm' },
  { max: -1e-3 },
];

/**
 * Reads `runs` random texts as quantities. Each must be read as something finite that its dimension allows, or refused
 * with a mend that is read if followed to the letter; in bounded time.
 *
 * @throws {Error} with the text and the seed, at the first that does anything else
 */
export function fuzzUnits(runs: number, seed: number): FuzzedUnits {
  const chance = chanceFrom(seed);
  let read = 0;
  let slowest = 0;
  for (let run = 0; run < runs; run += 1) {
    const text = randomQuantity(chance);
    const dimension = dimensionFor(text, chance);
    const options = optionsFor(dimension, chance);
    const started = performance.now();
    try {
      if (readOne(text, dimension, options)) read += 1;
    } catch (error) {
      const asked = `${dimension} ${JSON.stringify(options)}`;
      throw new Error(`seed ${seed}, run ${run}: ${JSON.stringify(text)} as ${asked}: ${String(error)}`, {
        cause: error,
      });
    }
    const took = performance.now() - started;
    slowest = Math.max(slowest, took);
    if (took > longestMilliseconds)
      throw new Error(`seed ${seed}, run ${run}: ${took} ms for ${JSON.stringify(text)}`);
  }
  return { runs, seed, read, refused: runs - read, slowestMilliseconds: slowest };
}

function readOne(text: string, dimension: Dimension, options: QuantityOptions): boolean {
  const result = readQuantity(text, dimension, options);
  if (!result.ok) {
    const mends = [...result.mend.matchAll(/`([^`]*)`/gu)].map(([, mend]) => mend ?? '');
    if (mends.length === 0 || result.what.trim() === '')
      throw new Error(`half a refusal: ${result.what}; ${result.mend}`);
    for (const mend of mends) {
      if (!readQuantity(mend, dimension, options).ok) throw new Error(`a mend that is refused: ${mend}`);
    }
    return false;
  }
  const { value, uncertainty, shape } = result;
  if (!Number.isFinite(value) || !(uncertainty === null || (uncertainty >= 0 && uncertainty < Infinity))) {
    throw new Error(`${value} ± ${uncertainty}`);
  }
  const least =
    options.positive === true || shape === 'positive' ? Number.MIN_VALUE : (options.min ?? -Infinity);
  if (value < least || value > (options.max ?? Infinity))
    throw new Error(`${value} is outside what was asked for`);
  return true;
}

/** What each unit measures, so that not everything is refused for its dimension. */
const dimensionsByUnit: ReadonlyMap<string, readonly Dimension[]> = new Map(
  unitTexts.map((unit) => [
    unit,
    dimensions.filter((dimension) => readQuantity(`0.5 ${unit}`, dimension).ok),
  ]),
);

function dimensionFor(text: string, chance: Chance): Dimension {
  const unit = unitTexts.find((known) => known !== '' && text.includes(known)) ?? '';
  const fitting = dimensionsByUnit.get(unit) ?? [];
  return chance.pick(fitting.length > 0 && chance.next() < 0.8 ? fitting : dimensions);
}

/** Limits are in SI and mean something for most dimensions only together with their size; contradictions are left out. */
function optionsFor(dimension: Dimension, chance: Chance): QuantityOptions {
  const options = chance.pick(everyOption);
  const canBeNegative = ['length', 'angle', 'number', 'waves', 'turns', 'current', 'voltage'].includes(
    dimension,
  );
  return !canBeNegative && options.max !== undefined && options.max < 0 ? {} : options;
}

function randomQuantity(chance: Chance): string {
  const kind = chance.next();
  if (kind < 0.1) return randomLetters(chance);
  if (kind < 0.6) return nearlyRight(chance);
  let text = '';
  for (let piece = chance.below(8); piece >= 0; piece -= 1) text += chance.pick(pieces) + chance.pick(glue);
  return chance.next() < 0.02 ? text.repeat(1 + chance.below(40)) : text;
}

/** A quantity, maybe with an uncertainty in its own unit, and often with one piece put in or taken out somewhere. */
function nearlyRight(chance: Chance): string {
  const unit = chance.pick(unitTexts);
  let text = `${chance.pick(numbers)}${chance.pick(glue)}${unit}`;
  if (chance.next() < 0.5) {
    const doubt = `${chance.pick(numbers)} ${chance.next() < 0.5 ? unit : chance.pick(unitTexts)}`;
    text += ` ${chance.pick(marks)} ${doubt}`;
  }
  if (chance.next() < 0.5) return text;
  const at = chance.below(text.length + 1);
  return (
    text.slice(0, at) + (chance.next() < 0.5 ? chance.pick(pieces) : '') + text.slice(at + chance.below(2))
  );
}

/** Any code points, lone surrogates and control characters among them. */
function randomLetters(chance: Chance): string {
  const length = chance.below(chance.next() < 0.05 ? 5000 : 40);
  const limit = chance.pick([0x80, 0x2100, 0x110000]);
  return Array.from({ length }, () => String.fromCodePoint(chance.below(limit))).join('');
}
