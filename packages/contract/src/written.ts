import { z } from './zod.ts';

/** A name for good, made by whoever makes the thing: `crypto.randomUUID()`, lower case. */
export const idText = z
  .string()
  .check(z.regex(/^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/u));

/** A moment, UTC, to the millisecond: `2026-11-25T10:52:57.000Z`. */
export const timeText = z.iso.datetime({ precision: 3 });

/** Counts what a thing went through, from 1. */
export const versionNumber = z.int().check(z.gte(1));

/** Counts every change to the bench book, whatever it concerns; 0 before the first. */
export const sequenceNumber = z.int().check(z.gte(0));

/** Characters a document may have (bench refuses longer ones, too). */
export const mostDocumentCharacters = 256 * 1024;

/** A document as it was written. No half of a surrogate pair: such a text could not be kept as UTF-8. */
export const documentText = z
  .string()
  .check(z.maxLength(mostDocumentCharacters), z.regex(/^\P{Surrogate}*$/u));

/** What a thing calls itself, read off its text by the station; never empty. */
export const nameText = z.string().check(z.minLength(1), z.maxLength(400));

/**
 * What every write carries.
 *
 * `write` names this one write, made by the page: sent twice after a lost connection, it is applied once and answered
 * alike. `base` is the version that was changed; 0 makes a new thing. Where the bench book has moved on, the answer is
 * 409 with what it holds now, and nothing is written.
 */
export const writeKeys = { write: idText, base: z.int().check(z.gte(0)) } as const;

/** What one version of a launch or a part says, apart from its text. */
export const versionFacts = {
  version: versionNumber,
  /** When it was written. */
  changed: timeText,
  name: nameText,
  /** Out of sight, but kept. */
  putAway: z.boolean(),
  /** Our own example: nobody's bench. */
  invented: z.boolean(),
} as const;
