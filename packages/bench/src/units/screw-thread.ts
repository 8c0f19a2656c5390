import { type Decimal, decimal, inverse, times } from './decimal.ts';
import { readNumber } from './number-text.ts';

const inchThread = /^(?:#\d{1,2}|(?:\d+\s+)?\d+\/\d+\s*(?:in|")?)\s*-\s*(\d+(?:\.\d+)?)(?:\s*tpi)?$/u;
const metricThread = /^M\s?\d+(?:\.\d+)?\s*[x×]\s*(\d+(?:\.\d+)?|\.\d+)(?:\s*mm)?$/iu;
const threadsPerInch = /^(\d+(?:\.\d+)?)\s*tpi$/u;

/**
 * The advance a turn, m, of a screw called by its thread: `80 tpi`, `1/4-80` and `#8-32` (diameter, threads per inch),
 * `M6x0.25` (diameter and pitch in mm). `null` where the text is no such name.
 *
 * @source common practice, no source: designations of metric and inch threads, single start
 */
export function readThread(text: string): Decimal | null {
  const perInch = readNumber((inchThread.exec(text) ?? threadsPerInch.exec(text))?.[1] ?? '');
  if (perInch && perInch.number.digits > 0n) return times(decimal(254, -4), inverse(perInch.number));
  const pitch = readNumber(metricThread.exec(text)?.[1] ?? '');
  if (pitch) return times(pitch.number, decimal(1, -3));
  return null;
}
