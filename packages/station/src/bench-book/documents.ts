import type { Database } from 'better-sqlite3';
import type {
  DocumentKind,
  DocumentState,
  DocumentWrite,
  KeptDocument,
  WriteOutcome,
} from './kept-document.ts';

interface Row extends Omit<KeptDocument, 'putAway' | 'invented'> {
  readonly putAway: number;
  readonly invented: number;
}

const columns = `document AS id, kind, version, changed, name, put_away AS putAway, invented, text`;
const joined = 'versions JOIN documents ON documents.id = versions.document';

const kept = ({ putAway, invented, ...rest }: Row): KeptDocument => ({
  ...rest,
  putAway: putAway === 1,
  invented: invented === 1,
});

/** Launches, parts and settings on disk; every version of each. */
export function documentsIn(db: Database, now: () => Date) {
  const versionOf = db.prepare<[string, number], Row>(
    `SELECT ${columns} FROM ${joined} WHERE document = ? AND version = ?`,
  );
  const newestOf = db.prepare<[string], Row>(
    `SELECT ${columns} FROM ${joined} WHERE document = ? ORDER BY version DESC LIMIT 1`,
  );
  const versionsOf = db.prepare<[string], Row>(
    `SELECT ${columns} FROM ${joined} WHERE document = ? ORDER BY version DESC`,
  );
  const all = db.prepare<[], Row>(
    `SELECT ${columns} FROM ${joined} WHERE version = (SELECT MAX(version) FROM versions AS later WHERE later.document = versions.document) ORDER BY changed DESC, id`,
  );
  const addDocument = db.prepare('INSERT INTO documents (id, kind) VALUES (?, ?)');
  const addVersion = db.prepare(
    'INSERT INTO versions (document, version, changed, name, put_away, invented, text) VALUES (?, ?, ?, ?, ?, ?, ?)',
  );
  const addChange = db.prepare('INSERT INTO changes ("write", document, version) VALUES (?, ?, ?)');
  const changeBy = db.prepare<[string], { document: string | null; version: number | null }>(
    'SELECT document, version FROM changes WHERE "write" = ?',
  );

  const newest = (id: string): KeptDocument | null => maybe(newestOf.get(id));
  const version = (id: string, which: number): KeptDocument | null => maybe(versionOf.get(id, which));

  /** Adds a version as it is given; the caller has seen to its number, and to a transaction. */
  function put(document: KeptDocument, write: string): void {
    if (document.version === 1) addDocument.run(document.id, document.kind);
    const { id, changed, name, putAway, invented, text } = document;
    addVersion.run(id, document.version, changed, name, putAway ? 1 : 0, invented ? 1 : 0, text);
    addChange.run(write, id, document.version);
  }

  function write(wanted: DocumentWrite): WriteOutcome {
    const before = changeBy.get(wanted.write);
    if (before !== undefined) {
      const made = before.document === wanted.id ? version(wanted.id, before.version ?? 0) : null;
      if (made === null || !isSameState(made, wanted) || made.version !== wanted.base + 1)
        return { kind: 'taken' };
      return { kind: 'kept', document: made, again: true };
    }
    const current = newest(wanted.id);
    if (current !== null && current.kind !== wanted.kind) return { kind: 'taken' };
    if ((current?.version ?? 0) !== wanted.base) return { kind: 'stale', current };
    const { write: writeId, base, ...state } = wanted;
    const document = { ...state, version: base + 1, changed: now().toISOString() };
    put(document, writeId);
    return { kind: 'kept', document, again: false };
  }

  return {
    newest,
    version,
    /** Newest first; none if there is no such document. */
    versions: (id: string): readonly KeptDocument[] => versionsOf.all(id).map(kept),
    /** The newest version of every document of these kinds, last changed first. */
    all: (kinds: readonly DocumentKind[]): readonly KeptDocument[] =>
      all.all().flatMap((row) => (kinds.includes(row.kind) ? [kept(row)] : [])),
    put,
    write: db.transaction(write).immediate,
  };
}

const maybe = (row: Row | undefined): KeptDocument | null => (row === undefined ? null : kept(row));

/** Whether two versions say the same, whenever they were written. The name follows from the text. */
export const isSameState = (one: DocumentState, other: DocumentState): boolean =>
  one.text === other.text && one.putAway === other.putAway && one.invented === other.invented;
