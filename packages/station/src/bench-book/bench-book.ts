import { Buffer } from 'node:buffer';
import type { Database } from 'better-sqlite3';
import { newId, newSecret, type World } from '../world.ts';
import { tellingTrouble } from './book-trouble.ts';
import { type Device, devicesIn } from './devices.ts';
import { documentsIn } from './documents.ts';
import { type EntryQuestion, entriesIn } from './entries.ts';
import { FolderLock } from './folder-lock.ts';
import type { BookEntry, Change, DocumentWrite, WriteOutcome } from './kept-document.ts';
import { bookFile, makeFolder, openDatabase } from './open-database.ts';
import { type KeptPracticeAct, practiceActsIn } from './practice-acts.ts';
import { readingsIn } from './readings.ts';

interface ChangeRow {
  readonly sequence: number;
  readonly write: string;
  readonly document: string | null;
  readonly version: number | null;
  readonly entry: string | null;
}

/**
 * The bench book of one data folder, open. What a method has returned is on the disk; what it could not keep it throws,
 * and nothing of it is there.
 */
export class BenchBook {
  readonly file: string;
  readonly world: World;
  /** Names this book for good. */
  readonly id: string;
  /** For signing what this book alone must recognise again; never leaves the machine. */
  readonly key: Buffer;
  readonly documents: Omit<ReturnType<typeof documentsIn>, 'write' | 'put'>;
  readonly devices: Pick<ReturnType<typeof devicesIn>, 'all' | 'byHash'>;
  /** Instruments and what they read. */
  readonly readings: ReturnType<typeof readingsIn>;
  /** Null where the folder is shared with a station that holds it. */
  readonly lock: FolderLock | null;
  readonly #documents: ReturnType<typeof documentsIn>;
  readonly #entries: ReturnType<typeof entriesIn>;
  readonly #devices: ReturnType<typeof devicesIn>;
  readonly #practiceActs: ReturnType<typeof practiceActsIn>;
  readonly #db: Database;
  readonly #listeners = new Set<(change: Change) => void>();

  /**
   * @param shared whether another station may have the folder at the same time: for looking, and for devices
   * @throws {Refusal} if the folder is held by another station, or its book cannot be opened
   */
  constructor(folder: string, world: World, { shared = false }: { readonly shared?: boolean } = {}) {
    makeFolder(folder);
    this.file = bookFile(folder);
    this.world = world;
    this.lock = FolderLock.taken(folder, shared);
    try {
      this.#db = openDatabase(folder, world, { shared, held: this.lock !== null });
    } catch (error) {
      this.lock?.release();
      throw error;
    }
    this.#documents = documentsIn(this.#db, world.now);
    this.#entries = entriesIn(this.#db);
    this.documents = this.#documents;
    this.#devices = devicesIn(this.#db, world.now);
    this.devices = this.#devices;
    this.readings = readingsIn(this.#db, (work) => this.#telling(work));
    this.#practiceActs = practiceActsIn(this.#db);
    this.id = this.#once('book', () => newId(world));
    this.key = Buffer.from(
      this.#once('key', () => newSecret(world)),
      'base64url',
    );
  }

  close(): void {
    this.#listeners.clear();
    this.#db.close();
    this.lock?.release();
  }

  /** Whether nothing was ever written in it. */
  get isNew(): boolean {
    return this.sequence === 0;
  }

  /** Of the last change; 0 before the first. */
  get sequence(): number {
    const last = this.#db.prepare('SELECT MAX(sequence) FROM changes').pluck().get();
    return typeof last === 'number' ? last : 0;
  }

  /** Hears of every change after it is kept. Returns how to stop it. */
  onChange(listener: (change: Change) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  write(write: DocumentWrite): WriteOutcome {
    const outcome = this.#telling(() => this.#documents.write(write));
    if (outcome.kind === 'kept' && !outcome.again) this.#tell();
    return outcome;
  }

  /** The entry as it is kept; null if its id means another one. */
  addEntry(entry: Omit<BookEntry, 'time'>): BookEntry | null {
    const time = this.world.now().toISOString();
    const outcome = this.#telling(() => this.#entries.write({ ...entry, time }));
    if (outcome !== null && !outcome.again) this.#tell();
    return outcome?.entry ?? null;
  }

  /** Lets a device in whose secret has this hash. */
  addDevice(id: string, name: string, hash: Uint8Array): Device {
    return this.#telling(() => this.#devices.add(id, name, hash));
  }

  /** What was done at the practice bench of a walk, in its order. */
  practiceActs(walk: string): readonly KeptPracticeAct[] {
    return this.#practiceActs.of(walk);
  }

  addPracticeAct(walk: string, act: KeptPracticeAct): void {
    this.#telling(() => this.#practiceActs.add(walk, act));
  }

  /** Lets a device in no longer; false if there is none. */
  revokeDevice(id: string): boolean {
    return this.#telling(() => this.#devices.revoke(id));
  }

  entry(id: string): BookEntry | null {
    return this.#entries.byId(id);
  }

  entries(question: EntryQuestion): readonly BookEntry[] {
    return this.#entries.asked(question);
  }

  /** Every entry, oldest first. */
  entriesInOrder(): readonly BookEntry[] {
    return this.#entries.inOrder();
  }

  /** The changes after one, in order, no more than `most` of them. A document comes as it was then. */
  changesSince(sequence: number, most: number): readonly Change[] {
    return this.#db
      .prepare<[number, number], ChangeRow>(
        'SELECT sequence, "write", document, version, entry FROM changes WHERE sequence > ? ORDER BY sequence LIMIT ?',
      )
      .all(sequence, most)
      .map((row) => this.#changeOf(row));
  }

  /** Runs several writes as one: all of them are kept, or none. */
  together<T>(
    work: (raw: {
      readonly putDocument: ReturnType<typeof documentsIn>['put'];
      readonly putEntry: ReturnType<typeof entriesIn>['put'];
    }) => T,
  ): T {
    const raw = { putDocument: this.#documents.put, putEntry: this.#entries.put };
    return this.#telling(() => this.#db.transaction(() => work(raw)).immediate());
  }

  /** Everything wrong with the file, by SQLite's own account; empty if nothing is. */
  faults(): readonly string[] {
    const found = this.#db.pragma('integrity_check') as readonly { readonly integrity_check: string }[];
    return found.map(({ integrity_check }) => integrity_check).filter((line) => line !== 'ok');
  }

  /** For tests: refuses to grow beyond this many pages, as a full disk does. */
  limitPages(most: number): void {
    this.#db.pragma(`max_page_count = ${most}`);
  }

  #once(key: string, make: () => string): string {
    return this.#telling(() => {
      this.#db.prepare('INSERT OR IGNORE INTO meta (key, value) VALUES (?, ?)').run(key, make());
      return String(this.#db.prepare('SELECT value FROM meta WHERE key = ?').pluck().get(key));
    });
  }

  #tell(): void {
    const [change] = this.changesSince(this.sequence - 1, 1);
    if (change !== undefined) for (const listener of this.#listeners) listener(change);
  }

  #changeOf({ sequence, write, document, version, entry }: ChangeRow): Change {
    const kept = document === null ? null : this.#documents.version(document, version ?? 0);
    if (kept !== null) return { sequence, write, subject: 'document', document: kept };
    const added = entry === null ? null : this.#entries.byId(entry);
    if (added !== null) return { sequence, write, subject: 'entry', entry: added };
    throw new Error(`change ${sequence} concerns nothing`); // foreign keys see to it that there is something
  }

  #telling<T>(work: () => T): T {
    return tellingTrouble(this.file, work);
  }
}
