import { z } from 'zod';

/** Version of what station and screens say to each other; both refuse another. */
export const contractVersion = 1;

/** What the station says of itself. */
export const statusAnswer = z.strictObject({
  coreward: z.literal('station'),
  contract: z.literal(contractVersion),
});
export type StatusAnswer = z.infer<typeof statusAnswer>;
