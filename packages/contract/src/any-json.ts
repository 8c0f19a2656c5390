import { z } from './zod.ts';

const read = z.json();
type AnyJson = z.infer<typeof read>;

/**
 * Whatever JSON can say, kept as it came. `z.json` alone gives back a copy, and leaves a key out of it that is called
 * `__proto__`: what somebody wrote would be gone without a word.
 */
export const anyJson = z
  .unknown()
  .check(z.refine((value) => read.safeParse(value).success, 'Expected JSON')) as unknown as z.ZodMiniType<
  AnyJson,
  AnyJson
>;
