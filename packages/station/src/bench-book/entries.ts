import type { Database } from 'better-sqlite3';
import type { BookEntry } from './kept-document.ts';

/** Which entries are asked for, newest first. */
export interface EntryQuestion {
  readonly launch: string | null;
  readonly kind: string | null;
  /** Only those before the entry of this id. */
  readonly before: string | null;
  readonly most: number;
}

const columns = 'id, time, kind, launch, data';

/** The entries on disk. They are added to and never changed. */
export function entriesIn(db: Database) {
  const byId = db.prepare<[string], BookEntry>(`SELECT ${columns} FROM entries WHERE id = ?`);
  const inOrder = db.prepare<[], BookEntry>(`SELECT ${columns} FROM entries ORDER BY rank`);
  const asked = db.prepare<EntryQuestion, BookEntry>(
    `SELECT ${columns} FROM entries
     WHERE (@launch IS NULL OR launch = @launch) AND (@kind IS NULL OR kind = @kind)
       AND (@before IS NULL OR rank < (SELECT rank FROM entries WHERE id = @before))
     ORDER BY rank DESC LIMIT @most`,
  );
  const add = db.prepare<BookEntry>(
    `INSERT INTO entries (${columns}) VALUES (@id, @time, @kind, @launch, @data)`,
  );
  const changeBy = db.prepare<[string], unknown>('SELECT 1 FROM changes WHERE "write" = ?');
  const addChange = db.prepare<[string, string]>('INSERT INTO changes ("write", entry) VALUES (?, ?)');

  /** Adds an entry as it is given; the caller has seen to a transaction. */
  function put(entry: BookEntry, write: string): void {
    add.run(entry);
    addChange.run(write, entry.id);
  }

  /** Adds an entry whose id is its write, once: sent again, it is answered alike. Null if the id means another. */
  function write(entry: BookEntry): { readonly entry: BookEntry; readonly again: boolean } | null {
    const before = byId.get(entry.id);
    if (before === undefined) {
      if (changeBy.get(entry.id) !== undefined) return null;
      put(entry, entry.id);
      return { entry, again: false };
    }
    const isSame = before.kind === entry.kind && before.launch === entry.launch && before.data === entry.data;
    return isSame ? { entry: before, again: true } : null;
  }

  return {
    byId: (id: string): BookEntry | null => byId.get(id) ?? null,
    inOrder: (): readonly BookEntry[] => inOrder.all(),
    asked: (question: EntryQuestion): readonly BookEntry[] => asked.all(question),
    put,
    write: db.transaction(write).immediate,
  };
}
