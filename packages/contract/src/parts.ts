import { partKinds } from '@coreward/bench';
import { documentText, idText, versionFacts, writeKeys } from './written.ts';
import { z } from './zod.ts';

/** What lies in a drawer. */
export const partKind = z.enum(partKinds);
export type PartKind = z.infer<typeof partKind>;

/**
 * A part, in its newest or an earlier version. `text` is a drawer document with exactly one part, of this kind, in it:
 * `coreward: 1`, then `lasers:` with one item, for instance. Many of them read as one drawer.
 */
export const keptPart = z.strictObject({ id: idText, kind: partKind, ...versionFacts, text: documentText });
export type KeptPart = z.infer<typeof keptPart>;

/** A new version of a part, or with `base: 0` a new part. A part stays of its kind. */
export const writePart = z.strictObject({
  ...writeKeys,
  kind: partKind,
  text: documentText,
  putAway: z.boolean(),
  invented: z.boolean(),
});
export type WritePart = z.infer<typeof writePart>;

/** The whole drawer, by kind and then by name, put-away ones included. */
export const partsAnswer = z.strictObject({ parts: z.array(keptPart) });
export type PartsAnswer = z.infer<typeof partsAnswer>;

/** Every version there was, newest first. */
export const partVersionsAnswer = z.strictObject({
  id: idText,
  kind: partKind,
  versions: z.array(z.strictObject(versionFacts)),
});
export type PartVersionsAnswer = z.infer<typeof partVersionsAnswer>;
