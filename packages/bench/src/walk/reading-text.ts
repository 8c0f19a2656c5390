import { readTyped } from '../units/read-typed.ts';
import { writeTogether, writeValue } from '../units/write.ts';

/**
 * What tells the light: a meter somebody reads off, in whatever it shows; an instrument or a practice bench, in W, V or A, or
 * in its own counts (`relative`); or an eye, whose readings are counts of brighter and dimmer.
 */
export const walkMeters = ['typed', 'power', 'voltage', 'current', 'relative', 'eye'] as const;
export type WalkMeter = (typeof walkMeters)[number];

const dimensionOf = (meter: WalkMeter) =>
  meter === 'power' || meter === 'voltage' || meter === 'current' ? meter : 'number';

/** A reading for people: `2.13 µW`, or the bare number of a meter whose unit nobody knows. */
export const readingText = (reading: number, meter: WalkMeter): string =>
  writeValue(reading, dimensionOf(meter), 3);

/** A live reading, always to three digits: one whose length changes all the time cannot be read from afar. */
export function liveText(reading: number, meter: WalkMeter): string {
  const { numbers, unit } = writeTogether([reading], dimensionOf(meter), 3);
  return `${numbers[0]}${unit}`;
}

/** A reading as somebody typed it, or why it is none. */
export type ReadingRead =
  | { readonly ok: true; readonly reading: number }
  | { readonly ok: false; readonly what: string; readonly mend: string };

/**
 * A reading as somebody types it. A bare number means the unit that is on the screen; a comma is a decimal point.
 *
 * @param shown the reading on the screen, whose unit a bare number takes; null: the unit of SI
 */
export function readReading(text: string, meter: WalkMeter, shown: number | null): ReadingRead {
  const read = readTyped(text, dimensionOf(meter), shown ?? 0);
  if (!read.ok) return { ok: false, what: read.what, mend: read.mend };
  if (read.value < 0) {
    return {
      ok: false,
      what: `\`${text.trim()}\` is less than nothing`,
      mend: 'Write what the meter shows as it is; write `0` where it shows less than nothing.',
    };
  }
  return { ok: true, reading: read.value };
}

/** The higher of two readings; what was not taken is below every other. */
export const higherOf = (one: number | null, other: number | null): number | null =>
  one === null ? other : other === null ? one : Math.max(one, other);
