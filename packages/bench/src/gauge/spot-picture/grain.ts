import { normalQuantile } from '@coreward/optics';

/**
 * How far rounding may move a level where no noise blurs the codes, in steps: with it nine of ten Gaussian spots of 100 to 220
 * codes without noise are held (simulated).
 */
const mostGrain = 0.45;

/**
 * Standard uncertainty that rounding to codes leaves of a dark level, in the unit of the light: little where noise blurs
 * the codes, most where a single code stands for all of the dark.
 *
 * How wide the noise is follows from the shares below and up to the commonest code. Only what shines above the dark counts:
 * farther out rounding errs as in the dark around, and is taken off with it.
 *
 * @param values of dark pixels
 * @param step between two codes, where the values do not show it
 * @source mean of rounded normal noise, whose first harmonic falls as exp(−2π²σ²), σ in steps: B. Widrow, IRE Trans. Circuit
 *   Theory 3, 266 (1956) (from memory)
 */
export function grainOf(values: readonly number[], step: number): number {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  const codes = [...counts.keys()].sort((a, b) => a - b);
  const commonest = codes.reduce((a, b) => (counts.get(b)! > counts.get(a)! ? b : a), codes[0] ?? 0);
  const at = codes.indexOf(commonest);
  const n = values.length;
  const below = codes.slice(0, at).reduce((sum, code) => sum + counts.get(code)!, 0);
  const upTo = below + (counts.get(commonest) ?? 0);
  // of two codes alone the noise may be nought, and the level just between them
  const width = below === 0 || upTo === n ? 0 : 1 / (normalQuantile(upTo / n) - normalQuantile(below / n));
  const next = [codes[at - 1], codes[at + 1]].flatMap((code) => (code === undefined ? [] : [code]));
  const spacing = Math.min(step, ...next.map((code) => Math.abs(code - commonest)));
  return mostGrain * spacing * Math.exp(-2 * Math.PI ** 2 * width ** 2);
}
