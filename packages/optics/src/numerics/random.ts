import { OutOfRange } from '../out-of-range.ts';
import { normalQuantile } from './normal.ts';

const words = 624;

/**
 * A stream of uniform random numbers in [0, 1) with 53 bits, wholly determined by `seed`: the Mersenne Twister
 * MT19937, period 2^19937 − 1. The same numbers as NumPy's `RandomState(seed).random_sample()`.
 *
 * @param seed a whole number from 0 to 2³² − 1
 * @throws {OutOfRange} if it is not
 * @source M. Matsumoto and T. Nishimura, ACM Trans. Model. Comput. Simul. 8, 3 (1998), seeding of 2002 (from memory)
 */
export function seededUniform(seed: number): () => number {
  const next = mersenneTwister(seed);
  return () => {
    const high = next() >>> 5;
    const low = next() >>> 6;
    return (high * 67108864 + low) / 9007199254740992;
  };
}

/** The generator itself: whole numbers from 0 to 2³² − 1. */
export function mersenneTwister(seed: number): () => number {
  if (!Number.isInteger(seed) || seed < 0 || seed > 0xffffffff) {
    throw new OutOfRange({
      where: 'random seed',
      what: `${seed} is not a whole number from 0 to 4294967295`,
      mend: 'Give such a number; any one will do.',
    });
  }
  const state = new Uint32Array(words);
  state[0] = seed;
  for (let i = 1; i < words; i++) {
    const last = state[i - 1]!;
    state[i] = Math.imul(1812433253, last ^ (last >>> 30)) + i;
  }
  let at = words;
  return () => {
    if (at === words) {
      twist(state);
      at = 0;
    }
    let y = state[at++]!;
    y ^= y >>> 11;
    y ^= (y << 7) & 0x9d2c5680;
    y ^= (y << 15) & 0xefc60000;
    return (y ^ (y >>> 18)) >>> 0;
  };
}

function twist(state: Uint32Array): void {
  for (let i = 0; i < words; i++) {
    const y = (state[i]! & 0x80000000) | (state[(i + 1) % words]! & 0x7fffffff);
    state[i] = state[(i + 397) % words]! ^ (y >>> 1) ^ (y & 1 ? 0x9908b0df : 0);
  }
}

/** One normal number (mean 0, deviation 1) from one uniform number of `uniform`. */
export function normalFrom(uniform: () => number): number {
  return normalQuantile(Math.max(uniform(), 2 ** -54)); // a uniform 0 would be −∞
}
