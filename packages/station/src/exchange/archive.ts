import { documentText, entryKind, idText, timeText, versionNumber, z } from '@coreward/contract';

/** What a book keeps as documents, in the order of an archive. */
export const archivedKinds = [
  'launch',
  'laser',
  'collimator',
  'mirror',
  'fibre',
  'detector',
  'reference',
  'settings',
] as const;

const archivedVersion = z.strictObject({
  version: versionNumber,
  changed: timeText,
  putAway: z.boolean(),
  invented: z.boolean(),
  text: documentText,
});

/** A launch, a part or the settings with every version there was, oldest first. */
export const archivedDocument = z.strictObject({
  id: idText,
  kind: z.enum(archivedKinds),
  versions: z.array(archivedVersion).check(z.minLength(1)),
});
export type ArchivedDocument = z.infer<typeof archivedDocument>;

export const archivedEntry = z.strictObject({
  id: idText,
  time: timeText,
  kind: entryKind,
  launch: z.nullable(idText),
  data: z.json(),
});
export type ArchivedEntry = z.infer<typeof archivedEntry>;

/**
 * Everything of a bench book that is its owner's: documents in the order of their names, entries oldest first. Not in
 * it: devices that were paired, and what the program keeps for itself. `coreward: 1` is the version of this form.
 */
export const archive = z.strictObject({
  coreward: z.literal(1),
  contents: z.literal('bench book'),
  documents: z.array(archivedDocument),
  entries: z.array(archivedEntry),
});
export type Archive = z.infer<typeof archive>;
