import { OutOfRange } from '../out-of-range.ts';

/**
 * Light in a camera's code, as shares of full scale, if the camera writes pictures as sRGB. Equal steps of the code are
 * not equal steps of light. Few cameras follow it exactly: two known levels tell.
 *
 * @param code 0 to 1
 * @throws {OutOfRange} outside that range
 * @source IEC 61966-2-1:1999 (constants of the encoding read in an encyclopaedia's copy)
 */
export function lightFromSrgb(code: number): number {
  if (!(code >= 0 && code <= 1)) {
    throw new OutOfRange({
      where: 'lightFromSrgb',
      what: `${code} is no share of full scale`,
      mend: 'Divide the code by the largest code of the camera.',
    });
  }
  return code <= 0.04045 ? code / 12.92 : ((code + 0.055) / 1.055) ** 2.4;
}

/** Whether no code reaches the one from which the camera no longer counts: one clipped pixel makes a sum a lower bound. */
export function isUnclipped(codes: readonly number[], clipCode: number): boolean {
  return codes.every((code) => code < clipCode);
}
