import { writeDecibel } from '../units/write.ts';

/** A loss as one says it, without a sign: `0.3 dB` for a transmission of 0.93. A gain above 1 keeps its minus. */
export const lossText = (transmission: number): string =>
  transmission <= 0 ? 'all the light' : writeDecibel(1 / transmission).replace('+', '');

/** `3.4 %`, two digits. */
export const percentText = (share: number): string => `${Number((100 * share).toPrecision(2))} %`;
