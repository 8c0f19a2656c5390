import type { Picture, Readings } from '@coreward/bench';

/** One simulated set of readings and the truth behind it, by the names of the gauge's answers. */
export interface SimulatedSet {
  readonly readings: Readings;
  readonly truth: Readonly<Record<string, number>>;
}

/** How sets for one gauge are drawn: all chance comes from `random`, uniform in [0, 1), and `normal`. */
export interface Simulator {
  readonly gauge: string;
  readonly what: string;
  /** Answers that are counted. */
  readonly counted: readonly string[];
  readonly draw: (random: () => number, normal: () => number) => SimulatedSet;
}

export function readings(parts: Partial<Readings>): Readings {
  return { columns: {}, settings: {}, words: {}, picture: null, ...parts };
}

/** A number between two, evenly. */
export const between = (random: () => number, from: number, to: number): number =>
  from + (to - from) * random();

/** A number between two above zero, evenly in its logarithm. */
export const betweenLog = (random: () => number, from: number, to: number): number =>
  Math.exp(between(random, Math.log(from), Math.log(to)));

export const stated = (value: number, uncertainty: number | null = null) => ({ value, uncertainty });

/** `count` numbers from one end to the other. */
export const evenly = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));

export const rounded = (value: number, step: number): number => Math.round(value / step) * step;

export const greyPicture = (width: number, height: number, samples: Uint8Array | Uint16Array): Picture => ({
  width,
  height,
  channels: 1,
  samples,
  fullScale: samples instanceof Uint16Array ? 65535 : 255,
  format: 'png',
});
