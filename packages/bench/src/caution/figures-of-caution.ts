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

/**
 * Where light is above a limit, to go behind `above the limit`: `at up to 84 m from the exit`, `all the way from the exit
 * to the wall it meets` in a room that was told, and `from the exit to whatever it meets, over 1 km in the open`.
 */
export function upToText(distance: number, roomLength: number | null, from: string | null): string {
  const begin = from === null ? '' : `from ${from} `;
  if (isBeyondTheRoom(distance, roomLength)) return `all the way ${begin}to the wall it meets`;
  if (distance > farthestAdvice) return `${begin}to whatever it meets, over 1 km in the open`;
  return `at up to ${metresText(distance)}${from === null ? '' : ` from ${from}`}`;
}

/** The same in a cell of a table: `0.47 m`, `to the wall`, `over 1 km`. */
export function shortReachText(distance: number, roomLength: number | null): string {
  if (distance === 0) return '0';
  if (isBeyondTheRoom(distance, roomLength)) return 'to the wall';
  return distance > farthestAdvice ? 'over 1 km' : metresText(distance);
}

const isBeyondTheRoom = (distance: number, roomLength: number | null): boolean =>
  roomLength !== null && distance > roomLength;

function metresText(distance: number): string {
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
