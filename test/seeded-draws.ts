import fc from 'fast-check';

/*
 * Property tests draw their cases at random. A plain run draws the same ones every time, so that a failure is found where
 * it was made; `COREWARD_SEED=fresh npx vitest run` draws new ones, and a number in its place repeats those of a report.
 */
const asked = process.env.COREWARD_SEED;

/** Any number will do; changing it means other cases, not better ones. */
const usualSeed = 515;

if (asked !== 'fresh') {
  const seed = asked === undefined ? usualSeed : Number(asked);
  if (!Number.isSafeInteger(seed)) {
    throw new Error(`COREWARD_SEED is \`${asked}\`; write a whole number, or \`fresh\` for new cases.`);
  }
  fc.configureGlobal({ ...fc.readConfigureGlobal(), seed });
}
