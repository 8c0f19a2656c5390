/** A stream of numbers in [0, 1) wholly determined by its seed; good enough to break things with. */
export interface Chance {
  readonly next: () => number;
  /** A whole number from 0 to `limit` − 1. */
  readonly below: (limit: number) => number;
  readonly pick: <T>(choices: readonly T[]) => T;
}

/** @source the mulberry32 generator, from memory; nothing depends on its quality */
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const below = (limit: number): number => Math.floor(next() * limit);
  return { next, below, pick: (choices) => choices[below(choices.length)]! };
}
