import type { Database } from 'better-sqlite3';

/** Something done at a practice bench; `act` is JSON. */
export interface KeptPracticeAct {
  readonly write: string;
  readonly act: string;
}

/** What was done at practice benches, on disk. */
export function practiceActsIn(db: Database) {
  const inOrder = db.prepare<[string], KeptPracticeAct>(
    'SELECT "write", act FROM practice_acts WHERE walk = ? ORDER BY rank',
  );
  const add = db.prepare('INSERT INTO practice_acts ("write", walk, act) VALUES (?, ?, ?)');
  return {
    /** Of one walk, in the order in which they were done. */
    of: (walk: string): readonly KeptPracticeAct[] => inOrder.all(walk),
    add: (walk: string, { write, act }: KeptPracticeAct): void => void add.run(write, walk, act),
  };
}
