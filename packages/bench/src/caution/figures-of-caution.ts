/** Numbers of cautions for people. A hazard is never rounded down, and a limit never up. */
import type { Dimension } from '../units/dimension.ts';
import { writeValue } from '../units/write.ts';

/** Rounded up to so many digits. */
export function roundedUp(value: number, digits = 2): number {
  if (value === 0 || !Number.isFinite(value)) return value;
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) - digits + 1);
  // a value that is round but for its last bit stays so
  return Math.ceil((value / step) * (1 - 1e-12)) * step;
}

/** A hazard's number, rounded up: `23 mW`. */
export function atMostText(value: number, dimension: Dimension, digits = 2): string {
  return writeValue(roundedUp(value, digits), dimension, digits);
}

/** Beyond this nobody has a room, m. */
const farthestAdvice = 1000;

/** A distance as advice: `0.47 m`, `84 m`, `the wall it meets`. */
export function distanceText(distance: number, roomLength: number | null): string {
  if (roomLength !== null && distance > roomLength) return 'the wall it meets';
  if (distance > farthestAdvice) return 'the wall it meets (over 1 km in the open)';
  return distance < 1
    ? atMostText(distance, 'length', 2).replace(/^(\d+) mm$/u, (_, mm) => metres(mm))
    : atMostText(distance, 'length', 2);
}

/** Tenths of a metre are said in metres, which is what a hand and a tape measure know. */
const metres = (millimetres: string): string => {
  const value = Number(millimetres);
  return value >= 100 ? `${value / 1000} m` : `${value} mm`;
};

/** `23 times`, `1.3 times`; a large number with no more digits than it deserves. */
export function timesText(times: number): string {
  if (times >= 1e6) return 'over a million times';
  return `${Number(roundedUp(times, 2).toPrecision(2))} times`;
}
