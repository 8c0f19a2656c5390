import { decibel, times, toNumber } from './decimal.ts';
import { type Dimension, dimensionFacts, nameOfKind } from './dimension.ts';
import { readNumber } from './number-text.ts';
import { type Misread, quote } from './quantity-read.ts';
import { readThread } from './screw-thread.ts';
import { readUnit } from './unit-text.ts';

/** One number with its unit, before anybody asks whether the value is possible. */
export interface Term {
  readonly ok: true;
  /** SI. */
  readonly value: number;
  /** As it was written. */
  readonly written: string;
  /** The unit as it was written; empty for a bare number. */
  readonly unit: string;
  /**
   * How steps in the written number move the value. `linear`: by the unit. `percent`: in percentage points.
   * `decibel`: by a factor (dBm). `celsius`: by kelvins. `thread`: a thread's name, no number to step.
   */
  readonly scale: 'linear' | 'percent' | 'decibel' | 'celsius' | 'thread';
}

/** One term of `dimension`, with nothing behind it. */
export function readTerm(text: string, dimension: Dimension): Term | Misread {
  const facts = dimensionFacts[dimension];
  const written = text.trim();
  const thread = dimension === 'screwPitch' ? readThread(written) : null;
  if (thread) return { ok: true, value: toNumber(thread), written, unit: '', scale: 'thread' };

  const found = readNumber(written);
  if (dimension === 'screwPitch' && /^M\s?[\d.]+$/iu.test(written)) {
    const examples = [`${written.toUpperCase()}x0.25`];
    return { ok: false, what: `${quote(text)} does not say how far a turn goes`, meant: [], examples };
  }
  if (!found) {
    return {
      ok: false,
      what: written === '' ? 'nothing is written here' : `${quote(text)} does not begin with a number`,
      meant: [],
    };
  }
  const unit = found.rest;
  if (dimension === 'power' && unit === 'dBm') {
    const milliwatts = Math.exp(toNumber(times(found.number, decibel)));
    return { ok: true, value: milliwatts / 1000, written, unit, scale: 'decibel' };
  }
  if (dimension === 'temperature' && unit === '°C') {
    return { ok: true, value: toNumber(found.number) + celsiusZero, written, unit, scale: 'celsius' };
  }
  const broken = brokenNumber(text, unit);
  if (broken !== null) return { ok: false, what: broken, meant: [] };
  const read = readUnit(unit);
  if (!read.known) {
    return { ok: false, what: unknownUnit(text, read.piece), meant: [] };
  }
  if (!facts.kinds.includes(read.kind)) {
    if (read.kind === '') return { ok: false, what: `${quote(text)} has no unit`, meant: [] };
    // The inch sign is the second's, too.
    const meant = dimension === 'angle' && unit === '"' ? [`${found.written} arcsec`] : [];
    return { ok: false, what: mismatch(text, read.kind, dimension), meant };
  }
  const value = toNumber(times(found.number, read.factor));
  if (dimension === 'loss' && read.kind === '%') {
    if (value >= 1)
      return { ok: false, what: `${quote(text)} would leave no light`, meant: [], examples: ['5 %'] };
    return { ok: true, value: -Math.log1p(-value), written, unit, scale: 'percent' };
  }
  return { ok: true, value, written, unit, scale: read.kind === '%' ? 'percent' : 'linear' };
}

/** 0 °C, K. @source BIPM, The International System of Units, 9th edition (2019), 2.3.1: from memory */
export const celsiusZero = 273.15;

/** "`6.2 nW` is a power, not a length". */
export function mismatch(text: string, kind: string, dimension: Dimension): string {
  const name = kind === '' ? 'a bare number' : nameOfKind(kind);
  const wanted = dimensionFacts[dimension].name;
  return name === null ? `${quote(text)} is not ${wanted}` : `${quote(text)} is ${name}, not ${wanted}`;
}

/** "`MM` is no unit known here". */
export function unknownUnit(text: string, piece: string): string {
  return /[\p{L}%°"]/u.test(piece)
    ? `${quote(piece)} is no unit known here`
    : `${quote(text)} goes on after its number with something that is no unit`;
}

/** Why a number ended early, if that is what `rest` shows; `null` if it did not. */
export function brokenNumber(text: string, rest: string): string | null {
  if (/^,\s*\d/u.test(rest)) return `${quote(text)} has a comma in its number`;
  // `1/m` is a unit.
  if (/^['’_]?(?!1\s*\/)\d/u.test(rest)) return `${quote(text)} has a gap in its number`;
  return null;
}
