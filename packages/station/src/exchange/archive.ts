import {
  anyJson,
  documentText,
  entryKind,
  idText,
  instrumentKind,
  instrumentSetup,
  nameText,
  reading,
  readingUnit,
  timeText,
  versionNumber,
  z,
} from '@coreward/contract';

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

/** An entry as an export has it. */
export const archivedEntry = z.strictObject({
  id: idText,
  time: timeText,
  kind: entryKind,
  launch: z.nullable(idText),
  data: anyJson,
});
export type ArchivedEntry = z.infer<typeof archivedEntry>;

/** What an instrument is, apart from its readings. */
export const instrumentFacts = {
  id: idText,
  kind: instrumentKind,
  unit: readingUnit,
  name: nameText,
  setup: instrumentSetup,
  floor: z.nullable(z.number()),
  saturation: z.nullable(z.number()),
  putAway: z.boolean(),
} as const;

/** An instrument with all it ever read, in the order in which it was kept. */
export const archivedInstrument = z.strictObject({ ...instrumentFacts, readings: z.array(reading) });
export type ArchivedInstrument = z.infer<typeof archivedInstrument>;

/**
 * Everything of a bench book that is its owner's: documents in the order of their names, entries oldest first. Not in
 * it: devices that were paired, and what the program keeps for itself. `coreward: 1` is the version of this form.
 */
export const archive = z.strictObject({
  coreward: z.literal(1),
  contents: z.literal('bench book'),
  documents: z.array(archivedDocument),
  entries: z.array(archivedEntry),
  /** Left out where there are none, as in books from before there were any. */
  instruments: z.exactOptional(z.array(archivedInstrument)),
});
export type Archive = z.infer<typeof archive>;
