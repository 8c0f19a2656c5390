/** What a device says in place of a reading, or the reading. */
export type DeviceNumber =
  | { readonly kind: 'value'; readonly value: number }
  /** More than the device can count at this range. */
  | { readonly kind: 'over' }
  /** The device has no number to give. */
  | { readonly kind: 'nothing' };

/** SCPI's figures for infinity and for no number, as IEEE 754 doubles of what is written. */
const infinity = 9.9e37;
const notANumber = 9.91e37;

/**
 * A number as it stands, with what its size may mean.
 *
 * @source SCPI-99, volume 1, 7.2.1.4 and 7.2.1.5: 9.9E37 is infinity, 9.91E37 is no number; from memory
 */
export function deviceNumber(value: number): DeviceNumber {
  if (!Number.isFinite(value) || Math.abs(value) === notANumber) return { kind: 'nothing' };
  if (value === infinity) return { kind: 'over' };
  return value === -infinity ? { kind: 'nothing' } : { kind: 'value', value };
}

/**
 * The first number of an answer in one of the forms a device may use: whole (NR1), with a point (NR2), with an exponent
 * (NR3); null if it does not begin with one.
 *
 * @source IEEE 488.2-1992, 8.7.2 to 8.7.4, read leniently as a listener should; from memory
 */
export function numberOfAnswer(answer: string): DeviceNumber | null {
  const [, written] =
    /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,5})?)\s*(?:[,;].*)?$/u.exec(answer) ?? [];
  return written === undefined ? null : deviceNumber(Number(written));
}
