import { writeDecibel, writeValue } from '../units/write.ts';

/** A loss as one says it, without a sign: `0.3 dB` for a transmission of 0.93. A gain above 1 keeps its minus. */
export const lossText = (transmission: number): string =>
  transmission <= 0 ? 'all the light' : writeDecibel(1 / transmission).replace('+', '');

/** `3.4 %`, two digits. */
export const percentText = (share: number): string => `${Number((100 * share).toPrecision(2))} %`;

/** Light is known by its nanometres, in the infrared too: `1550 nm`. */
export const wavelengthText = (wavelength: number): string => writeValue(wavelength, 'length', 4, 'nm');
