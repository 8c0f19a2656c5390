import { idText, sequenceNumber } from './written.ts';
import { z } from './zod.ts';

/** Version of what station and screens say to each other; a page of another version reloads itself. */
export const contractVersion = 4;

/** What the station says of itself. */
export const statusAnswer = z.strictObject({
  coreward: z.literal('station'),
  contract: z.int(),
  /** Of the program. */
  version: z.string(),
  /** Names this bench book for good; sequence numbers of another one mean nothing here. */
  book: idText,
  /** The last change there was. */
  sequence: sequenceNumber,
  /** Who asks: the station's own computer or a paired device. */
  you: z.enum(['here', 'paired']),
  /** Whether other machines can be paired. */
  lan: z.boolean(),
});
export type StatusAnswer = z.infer<typeof statusAnswer>;
