import { anyJson } from './any-json.ts';
import { idText, timeText } from './written.ts';
import { z } from './zod.ts';

/**
 * What an entry is about. More kinds may come; these have a meaning already:
 * `note` (data: `{ text }`), `caution read` (`{ caution, text, key }`: what was shown and ticked off; another `key` asks
 * again), `answer` (`{ question, answer }`: a question that the program cannot answer by itself, such as whether the far end is
 * unplugged; it ages with its time), `withdrawn` (`{ entry }`: an earlier entry that no longer counts), `walk` and `steer` (a
 * beginning or one answer of it), `gauge` (readings and what they came to).
 */
export const entryKind = z.string().check(z.regex(/^[a-z][a-z0-9 -]{0,39}$/u));

/** Characters that the data of one entry may have as JSON. */
export const mostDataCharacters = 64 * 1024;

/** One line of the bench book. It is never changed and never taken out. */
export const keptEntry = z.strictObject({
  id: idText,
  time: timeText,
  kind: entryKind,
  /** The launch that stood on the bench; null if none did. */
  launch: z.nullable(idText),
  data: anyJson,
});
export type KeptEntry = z.infer<typeof keptEntry>;

/** A new entry. Its `write` becomes its id; the station puts the time. */
export const writeEntry = z.strictObject({
  write: idText,
  kind: entryKind,
  launch: z.nullable(idText),
  data: anyJson,
});
export type WriteEntry = z.infer<typeof writeEntry>;

/** Which entries; nothing asks for the newest of all. */
export const entriesQuery = z.strictObject({
  launch: z.optional(idText),
  kind: z.optional(entryKind),
  /** Only what was entered before this entry. */
  before: z.optional(idText),
});
export type EntriesQuery = z.infer<typeof entriesQuery>;

/** Entries in one answer, at most. */
export const mostEntriesAtOnce = 200;

/** Newest first; `more` says that there are earlier ones, to be had with `before`. */
export const entriesAnswer = z.strictObject({ entries: z.array(keptEntry), more: z.boolean() });
export type EntriesAnswer = z.infer<typeof entriesAnswer>;
