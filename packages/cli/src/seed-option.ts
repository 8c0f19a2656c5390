import { Refusal, readSeed } from '@coreward/bench';

/** @throws {Refusal} if what stands behind `--practice` is no whole number that a seed can be */
export function seedFrom(written: string): number {
  const seed = readSeed(written);
  if (seed !== null) return seed;
  throw new Refusal({
    where: '--practice',
    what: `\`${written}\` is no whole number from 0 to ${2 ** 32 - 1}`,
    mend: 'Write `--practice 7`.',
  });
}
