import { type Decimal, decimal } from './decimal.ts';

/** A number at the start of a text. */
export interface NumberText {
  readonly number: Decimal;
  /** As it was written. */
  readonly written: string;
  /** What follows it, without leading blanks. */
  readonly rest: string;
}

const fraction = /^([+\-−]?)(?:(\d+)\s+)?(\d+)\/(\d+)(?![\d.,])/u;
const plain =
  /^([+\-−]?)(\d+(?:\.\d*)?|\.\d+)(?:[eE]([+\-−]?\d+)|\s*[×x*·]\s*10(?:\^([+\-−]?\d+)|([⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)))?/u;

/** `⁻³` as `-3`. */
export function fromSuperscript(text: string): string {
  return text.replace(/[⁺⁻⁰¹²³⁴⁵⁶⁷⁸⁹]/gu, (sign) => '+-0123456789'.charAt('⁺⁻⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(sign)));
}

/** A whole number that may carry a typographical minus. */
export function readWhole(text: string): number {
  return Number(text.replace('−', '-'));
}

/**
 * The number at the start of `text`: `6.2`, `-3`, `−3`, `.5`, `2.3e-3`, `2.3×10⁻³`, `2.3 x 10^-3`, `1/4`, `1 1/4`.
 * `null` where there is none. A comma is never part of a number here: `1,5` stops at the comma.
 */
export function readNumber(text: string): NumberText | null {
  const broken = fraction.exec(text);
  if (broken) {
    const [written, sign, whole = '0', over = '0', under = '0'] = broken;
    const divisor = BigInt(under);
    if (divisor === 0n) return null;
    const digits = BigInt(whole) * divisor + BigInt(over);
    const number = decimal(isMinus(sign) ? -digits : digits, 0, divisor);
    return { number, written, rest: text.slice(written.length).trimStart() };
  }
  const decimalText = plain.exec(text);
  if (!decimalText) return null;
  const [written, sign, mantissa = '0', e, caret, superscript] = decimalText;
  const [whole = '', places = ''] = mantissa.split('.');
  const digits = BigInt(`0${whole}${places}`);
  const exponent = readWhole(e ?? caret ?? fromSuperscript(superscript ?? '0'));
  const number = decimal(isMinus(sign) ? -digits : digits, exponent - places.length);
  return { number, written, rest: text.slice(written.length).trimStart() };
}

function isMinus(sign: string | undefined): boolean {
  return sign === '-' || sign === '−';
}
