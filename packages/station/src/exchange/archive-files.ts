import { Refusal, type RefusalParts } from '@coreward/bench';
import { idText, timeText, versionNumber, z } from '@coreward/contract';
import { anyName } from '../bench-book/readable.ts';
import {
  type Archive,
  type ArchivedDocument,
  archive,
  archivedDocument,
  instrumentFacts,
} from './archive.ts';
import { readCsv, writeCsv } from './csv.ts';
import { readingsFrom, readingsTable } from './readings-table.ts';

/** The file that says what the others are. */
export const indexFile = 'coreward-export.json';
const entriesFile = 'entries.csv';
const entryColumns = ['id', 'time', 'kind', 'launch', 'data'] as const;

/** A file below the folder of the index, whatever it says. */
const filePath = z.string().check(z.regex(/^(?!.*\.\.)[\p{L}\p{N}][\p{L}\p{N}./-]*$/u));

const index = z.strictObject({
  coreward: z.literal(1),
  contents: z.literal('bench book'),
  documents: z.array(
    z.strictObject({
      id: idText,
      kind: archivedDocument.def.shape.kind,
      versions: z.array(
        z.strictObject({
          version: versionNumber,
          changed: timeText,
          putAway: z.boolean(),
          invented: z.boolean(),
          file: filePath,
        }),
      ),
    }),
  ),
  entries: z.literal(entriesFile),
  instruments: z.exactOptional(z.array(z.strictObject({ ...instrumentFacts, file: filePath }))),
});

/**
 * An archive as files for people: every launch and part a YAML file, the newest version of each in plain sight and the
 * earlier ones in `earlier/`, the entries a table, the readings of each
 * instrument another, and an index.
 *
 * @returns texts by their paths below one folder; the index comes last, so that a folder with an index is a whole one
 */
export function archiveFiles({ documents, entries, instruments }: Archive): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  const indexed = documents.map((document) => {
    const paths = pathsOf(document, files);
    document.versions.forEach(({ text }, at) => {
      files.set(paths[at]!, text);
    });
    const versions = document.versions.map(({ text: _, ...facts }, at) => ({ ...facts, file: paths[at]! }));
    return { id: document.id, kind: document.kind, versions };
  });
  const rows = entries.map((entry) => [
    entry.id,
    entry.time,
    entry.kind,
    entry.launch ?? '',
    JSON.stringify(entry.data),
  ]);
  files.set(entriesFile, writeCsv([entryColumns, ...rows]));
  const series = instruments?.map(({ readings, ...facts }) => {
    const file = `readings/${facts.kind}-${facts.id}.csv`;
    files.set(file, readingsTable(readings));
    return { ...facts, file };
  });
  const facts = {
    coreward: 1,
    contents: 'bench book',
    documents: indexed,
    entries: entriesFile,
    ...(series === undefined ? {} : { instruments: series }),
  };
  files.set(indexFile, `${JSON.stringify(facts, null, 2)}\n`);
  return files;
}

/** One path for each version: short if that is unique. */
function pathsOf(
  { id, kind, versions }: ArchivedDocument,
  taken: ReadonlyMap<string, string>,
): readonly string[] {
  const newest = versions.at(-1)!;
  const words = (
    anyName(kind, newest.text)
      .normalize('NFC')
      .toLowerCase()
      .match(/[\p{L}\p{N}]+/gu) ?? []
  ).join('-');
  const name = [...words].slice(0, 40).join('');
  const folder = kind === 'launch' ? 'launches' : kind === 'settings' ? 'settings' : 'drawer';
  const ending = kind === 'settings' ? 'json' : kind === 'launch' ? 'launch.yaml' : `${kind}.yaml`;
  const all = (short: string) =>
    versions.map(({ version }) =>
      version === newest.version
        ? `${folder}/${name}-${short}.${ending}`
        : `${folder}/earlier/${name}-${short}.v${version}.${ending}`,
    );
  const brief = all(id.slice(0, 8));
  return brief.some((path) => taken.has(path)) ? all(id) : brief;
}

/**
 * The archive that lies in a folder.
 *
 * @param read the text of a file of it, by its path below the folder; throws if it cannot be read
 * @throws {Refusal} if what lies there is no export
 */
export async function archiveIn(read: (path: string) => Promise<string>): Promise<Archive> {
  const { documents, instruments } = checked(index, jsonIn(await read(indexFile), indexFile), indexFile);
  const archived: ArchivedDocument[] = [];
  for (const { id, kind, versions } of documents) {
    const whole = [];
    for (const { file, ...facts } of versions) whole.push({ ...facts, text: await read(file) });
    archived.push({ id, kind, versions: whole });
  }
  const entries = entriesIn(await read(entriesFile));
  const facts = { coreward: 1, contents: 'bench book', documents: archived, entries };
  if (instruments === undefined) return checked(archive, facts, indexFile);
  const series = [];
  for (const { file, ...rest } of instruments) {
    const readings = readingsFrom(await read(file));
    if (readings === null) throw notAnExport(file, 'its rows are not those of readings');
    series.push({ ...rest, readings });
  }
  return checked(archive, { ...facts, instruments: series }, indexFile);
}

/**
 * The archive in a JSON text.
 *
 * @throws {Refusal} if it is none
 */
export function archiveFrom(text: string, file: string): Archive {
  return checked(archive, jsonIn(text, file), file);
}

function entriesIn(text: string): readonly object[] {
  const [head, ...rows] = readCsv(text) ?? [];
  if (head?.join() !== entryColumns.join())
    throw notAnExport(entriesFile, `its columns are not ${entryColumns.join(', ')}`);
  return rows.map(([id, time, kind, launch, data], at) => ({
    id,
    time,
    kind,
    launch: launch === '' ? null : launch,
    data: jsonIn(data ?? '', `${entriesFile}:${at + 2}`),
  }));
}

function jsonIn(text: string, where: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw notAnExport(where, 'this is not JSON');
  }
}

const mostRefused = 20;

function checked<T extends z.ZodMiniType>(schema: T, value: unknown, file: string): z.infer<T> {
  const found = schema.safeParse(value);
  if (found.success) return found.data;
  throw new Refusal(
    found.error.issues.slice(0, mostRefused).map(
      ({ path }): RefusalParts => ({
        where: `${file} ${path.map(String).join('.')}`.trim(),
        what: 'an export of Coreward has something else here',
        mend: 'Import the export as it was written, with the Coreward that wrote it or a newer one.',
      }),
    ),
  );
}

const notAnExport = (where: string, what: string): Refusal =>
  new Refusal({ where, what, mend: 'Import what `coreward export` wrote, as it was written.' });
