import { units } from './unit-table.ts';

/** What people also call a unit, in small letters. */
const alsoCalled: Readonly<Record<string, string>> = {
  micron: 'µm',
  µ: 'µm',
  μ: 'µm',
  mu: 'µm',
  inch: 'in',
  inches: 'in',
  ins: 'in',
  '″': 'in',
  '”': 'in',
  "''": 'in',
  mil: 'thou',
  feet: 'ft',
  foot: 'ft',
  degree: '°',
  º: '°',
  '˚': '°',
  "'": 'arcmin',
  '′': 'arcmin',
  '’': 'arcmin',
  sec: 's',
  hr: 'h',
  hour: 'h',
  rev: 'turn',
  rotation: 'turn',
  percent: '%',
  pct: '%',
  pc: '%',
  decibel: 'dB',
  lambda: 'waves',
  c: '°C',
  degc: '°C',
  '℃': '°C',
  celsius: '°C',
  tpi: 'tpi',
  dbm: 'dBm',
};

const spelledPrefixes: Readonly<Record<string, string>> = {
  femto: 'f',
  pico: 'p',
  nano: 'n',
  micro: 'µ',
  milli: 'm',
  centi: 'c',
  kilo: 'k',
  mega: 'M',
  giga: 'G',
  '': '',
};

const spelledUnits: Readonly<Record<string, string>> = {
  metre: 'm',
  meter: 'm',
  watt: 'W',
  radian: 'rad',
  second: 's',
  ampere: 'A',
  amp: 'A',
  volt: 'V',
  hertz: 'Hz',
  joule: 'J',
  ohm: 'Ω',
  kelvin: 'K',
};

const spelled = new RegExp(
  `^(${Object.keys(spelledPrefixes).join('|')})(${Object.keys(spelledUnits).join('|')})s?$`,
  'u',
);

/**
 * Units that an unknown one may have been meant as: another name, written out, or with the shift key held at the wrong
 * moment. Most likely first.
 */
export function nearUnits(piece: string): readonly string[] {
  const small = piece.toLowerCase();
  const single = small.replace(/(?<=..)s$/u, '');
  const [, prefix, unit] = spelled.exec(small) ?? [];
  return [
    alsoCalled[small] ?? alsoCalled[single],
    unit === undefined ? undefined : `${spelledPrefixes[prefix ?? '']}${spelledUnits[unit]}`,
    // Either micro sign is one letter in small print.
    ...[...units.keys()].filter((symbol) => [small, single].includes(symbol.toLowerCase())),
  ].filter((symbol) => symbol !== undefined);
}

/** Whether it stands for itself: a unit, or a word of the reader's own. */
export function isKnownPiece(piece: string): boolean {
  return units.has(piece) || ['within', 'per', 'tpi', 'dBm', '°C', 'x', 'e', 'E', 'M'].includes(piece);
}
