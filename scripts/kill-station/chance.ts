/**
 * Numbers from 0 to 1 that a seed decides.
 *
 * @source the linear congruential generator of D. E. Knuth, The Art of Computer Programming 2, 3.3.4, table 1, line 16
 *   (modulus 2³², factor 1664525), from memory; plenty for choosing moments
 */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
