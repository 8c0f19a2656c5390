import { isKnownPiece, nearUnits } from './near-unit.ts';

/** Ways to take a text that cannot be read as one that can: each gives what may have been meant, or nothing. */
type Repair = (text: string) => readonly string[];

const number = '[+\\-−]?(?:\\d+(?:\\.\\d+)?|\\.\\d+)(?:[eE][+\\-−]?\\d+)?';
const plusMinus = '(?:±|\\+\\/[-−]|\\+[-−])';

const bracketed = new RegExp(`^\\(\\s*(${number})\\s*${plusMinus}\\s*(${number})\\s*\\)\\s*(\\D.*)$`, 'u');
const unitAtTheEnd = new RegExp(
  `^(${number})\\s*(±|\\+\\/[-−]|\\+[-−]|within)\\s*(${number})\\s*([^\\d\\s].*)$`,
  'u',
);
const range = new RegExp(
  `^(${number})\\s*([^\\d\\s+\\-−–—.]*)\\s*(?:-|–|—|−|\\.\\.\\.?|…|\\bto\\b)\\s*(${number})\\s*([^\\d\\s].*)$`,
  'u',
);
const concise = /^([+\-−]?\d+(?:\.(\d+))?)\((\d+)\)\s*(\D.*)$/u;

/** `(4.5 ± 0.1) mm`, `4.5 ± 0.1 mm`: both numbers get the unit. */
const shareUnit: Repair = (text) => {
  const [, value, spread, unit] = bracketed.exec(text) ?? [];
  const [, bare, mark, doubt, last] = unitAtTheEnd.exec(text) ?? [];
  if (unit !== undefined) return [`${value} ${unit} ± ${spread} ${unit}`];
  return last === undefined ? [] : [`${bare} ${last} ${mark} ${doubt} ${last}`];
};

/** `4.50(12) mm`: the digits in brackets are the uncertainty of the last places. */
const spellOut: Repair = (text) => {
  const [, value, places = '', spread = '', unit] = concise.exec(text) ?? [];
  if (value === undefined) return [];
  const padded = spread.padStart(places.length + 1, '0');
  const doubt = places === '' ? spread : `${padded.slice(0, -places.length)}.${padded.slice(-places.length)}`;
  return [`${value} ${unit} ± ${doubt} ${unit}`];
};

/** `1 to 2 mm`: the middle, and how far the ends are from it. */
const middleOfRange: Repair = (text) => {
  const [, from, unitOfFrom, to, unit] = range.exec(text) ?? [];
  if (from === undefined || (unitOfFrom !== '' && unitOfFrom !== unit)) return [];
  const [low, high] = [Number(from.replace('−', '-')), Number(to?.replace('−', '-'))];
  if (!(high > low)) return [];
  // Twelve digits, so that half of 0.1 + 0.2 is written 0.15.
  const shown = (n: number): string => String(Number(n.toPrecision(12)));
  return [`${shown((low + high) / 2)} ${unit} within ${shown((high - low) / 2)} ${unit}`];
};

/** `1,5 mm`, and where a number has both signs, `1,550.5 nm` and `1.550,5 nm`: the last one is the decimal sign. */
const decimalComma: Repair = (text) => {
  const pointed = text.replace(/\d[\d.,]*,[\d.,]*\d/gu, (number) => {
    const last = Math.max(number.lastIndexOf(','), number.lastIndexOf('.'));
    const isMixed = number.includes('.') || number.indexOf(',') !== number.lastIndexOf(',');
    const whole = number.slice(0, last).replace(/[.,]/gu, '');
    return isMixed && !number.includes('.')
      ? number.replace(/,/gu, '')
      : `${whole}.${number.slice(last + 1)}`;
  });
  return pointed === text ? [] : [pointed];
};

/** `1 550 nm`, `1'550 nm`, `1_550 nm` and thin spaces. */
const closeGaps: Repair = (text) => {
  const closed = text.replace(/(\d)[\s'’_](?=\d{3}(?!\d))/gu, '$1');
  return closed === text ? [] : [closed];
};

const plainSigns: Repair = (text) => {
  const plain = text
    .replace(/[‐‑‒–—﹣-]\s*(?=[\d.])/gu, '-')
    .replace(/^([+\-−])\s+/u, '$1')
    .replace(/[０-９]/gu, (digit) => String.fromCharCode(digit.charCodeAt(0) - 0xfee0))
    .replace(/％/gu, '%')
    .replace(/\bplus(?:\s+or|\s*\/)?\s*minus\b/iu, '±')
    .replace(/(?<=\S\s)WITHIN(?=\s)/iu, 'within');
  return plain === text ? [] : [plain];
};

/** `~6 mm`, `about 6 mm`, `"6 mm"`, `6 mm.`: what stands around a quantity. */
const bare: Repair = (text) => {
  const stripped = text
    .replace(/^(?:[~≈≃=“”"'‘’(]|ca\.?|about|approx\.?)\s*/iu, '')
    .replace(/\s*[.,;:!?“”"'‘’)]$/u, '');
  return stripped === text ? [] : [stripped];
};

/** `8-32`: a numbered screw without its sign. */
const numberedScrew: Repair = (text) => (/^\d{1,2}-\d{2,3}$/u.test(text) ? [`#${text}`] : []);

const nearestUnit: Repair = (text) => {
  for (const { 0: piece, index } of text.matchAll(/[^\s\d·⋅*/^+\-−⁺⁻⁰¹²³⁴⁵⁶⁷⁸⁹.,±()]+/gu)) {
    if (isKnownPiece(piece)) continue;
    const near = nearUnits(piece);
    if (near.length > 0)
      return near.map((unit) => text.slice(0, index) + unit + text.slice(index + piece.length));
  }
  return [];
};

/** In the order in which they are tried. */
export const repairs: readonly Repair[] = [
  shareUnit,
  spellOut,
  middleOfRange,
  decimalComma,
  closeGaps,
  plainSigns,
  nearestUnit,
  numberedScrew,
  bare,
];
