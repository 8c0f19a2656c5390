import type { Reading } from '@coreward/bench';

/** Readings in one block, at most. */
export const mostInBlock = 512;

/** Version of the form: this byte, then the times, the values (a gap is no number) and the marks, 8 + 8 + 1 bytes each. */
const form = 1;
const bytesEach = 17;

/** What a block comes to, without opening it. */
export interface BlockFacts {
  /** Earliest and latest, ms. */
  readonly first: number;
  readonly last: number;
  /** With the gaps. */
  readonly count: number;
  readonly gaps: number;
  readonly saturated: number;
  readonly min: number | null;
  readonly max: number | null;
  /** Of the readings that have a value. */
  readonly mean: number | null;
}

/** What some readings come to; there must be one at least. */
export function blockFacts(readings: readonly Reading[]): BlockFacts {
  const times = readings.map(({ t }) => t);
  const values = readings.map(({ value }) => value).filter((value) => value !== null);
  const none = values.length === 0;
  return {
    first: Math.min(...times),
    last: Math.max(...times),
    count: readings.length,
    gaps: readings.length - values.length,
    saturated: readings.filter(({ saturated }) => saturated).length,
    min: none ? null : Math.min(...values),
    max: none ? null : Math.max(...values),
    mean: none ? null : values.reduce((sum, value) => sum + value, 0) / values.length,
  };
}

/** Readings as bytes, digit by digit what they were. */
export function packed(readings: readonly Reading[]): Buffer {
  const count = readings.length;
  const bytes = Buffer.alloc(1 + bytesEach * count);
  bytes[0] = form;
  readings.forEach(({ t, value, saturated }, index) => {
    bytes.writeDoubleLE(t, 1 + 8 * index);
    bytes.writeDoubleLE(value ?? Number.NaN, 1 + 8 * (count + index));
    bytes[1 + 16 * count + index] = saturated ? 1 : 0;
  });
  return bytes;
}

/** Shows each reading of a block in its order, without making an object of it: there may be a million. */
export function eachPacked(
  bytes: Buffer,
  show: (t: number, value: number | null, saturated: boolean) => void,
): void {
  if (bytes[0] !== form || (bytes.length - 1) % bytesEach !== 0) throw new Error('no block of readings');
  const count = (bytes.length - 1) / bytesEach;
  for (let index = 0; index < count; index += 1) {
    const value = bytes.readDoubleLE(1 + 8 * (count + index));
    show(
      bytes.readDoubleLE(1 + 8 * index),
      Number.isNaN(value) ? null : value,
      bytes[1 + 16 * count + index] === 1,
    );
  }
}

/** The readings of a block, in the order in which they were kept. */
export function unpacked(bytes: Buffer): readonly Reading[] {
  const readings: Reading[] = [];
  eachPacked(bytes, (t, value, saturated) => readings.push({ t, value, saturated }));
  return readings;
}
