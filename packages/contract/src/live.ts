import { keptEntry } from './entries.ts';
import { instrumentMessages } from './instruments.ts';
import { keptLaunch } from './launches.ts';
import { keptPart } from './parts.ts';
import { keptSettings } from './settings.ts';
import { turnedMessage } from './walk.ts';
import { idText, sequenceNumber } from './written.ts';
import { z } from './zod.ts';

/** Where the live channel is. `?book=…&since=N` continues behind change N; without them it begins with the next change. */
export const livePath = '/api/live';

/** The station is heard at least this often, ms; a page that hears nothing for longer than twice this has lost it. */
export const beatInterval = 5_000;

/** WebSocket close codes of our own. */
export const liveClosed = {
  /** The device was revoked or never paired. */
  unpaired: 4401,
  /** The page said something; it is to listen only. */
  spoken: 4400,
  /** The page fell too far behind: come again. */
  slow: 4408,
} as const;

/** `write` is the write that made the change, so that a page knows its own. */
const change = { sequence: sequenceNumber, write: idText } as const;

/** What the station says unasked; what changes the bench book in the order of `sequence`. A page only listens. */
export const liveMessage = z.discriminatedUnion('type', [
  /** First of all. With `startOver` the page must fetch everything anew: changes it has not seen cannot be told. */
  z.strictObject({
    type: z.literal('hello'),
    contract: z.int(),
    book: idText,
    sequence: sequenceNumber,
    startOver: z.boolean(),
  }),
  z.strictObject({ type: z.literal('launch'), ...change, launch: keptLaunch }),
  z.strictObject({ type: z.literal('part'), ...change, part: keptPart }),
  z.strictObject({ type: z.literal('entry'), ...change, entry: keptEntry }),
  z.strictObject({ type: z.literal('settings'), ...change, settings: keptSettings }),
  ...instrumentMessages,
  turnedMessage,
  /** Nothing new. */
  z.strictObject({ type: z.literal('beat'), sequence: sequenceNumber }),
]);
export type LiveMessage = z.infer<typeof liveMessage>;

/** What is told as it happens and held nowhere but at the station: of instruments, and of a practice bench's screws. */
export type PassingMessage = Extract<
  LiveMessage,
  { type: 'instrument' | 'instrument gone' | 'readings' | 'turned' }
>;
