/**
 * Launches, parts and settings, each with every version it had, and the order in which all of it was written.
 * Frozen: a book of this version may lie on someone's disk.
 */
export const documents = `
CREATE TABLE meta (key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID;

CREATE TABLE documents (
  id TEXT PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN
    ('launch', 'laser', 'collimator', 'mirror', 'fibre', 'detector', 'reference', 'settings'))
) STRICT;

CREATE TABLE versions (
  document TEXT NOT NULL REFERENCES documents (id),
  version INTEGER NOT NULL CHECK (version >= 1),
  changed TEXT NOT NULL,
  name TEXT NOT NULL,
  put_away INTEGER NOT NULL CHECK (put_away IN (0, 1)),
  invented INTEGER NOT NULL CHECK (invented IN (0, 1)),
  text TEXT NOT NULL,
  PRIMARY KEY (document, version)
) STRICT;

CREATE TABLE changes (
  sequence INTEGER PRIMARY KEY AUTOINCREMENT,
  "write" TEXT NOT NULL UNIQUE,
  document TEXT NOT NULL,
  version INTEGER NOT NULL,
  FOREIGN KEY (document, version) REFERENCES versions (document, version)
) STRICT;

CREATE TRIGGER versions_stay BEFORE UPDATE ON versions
  BEGIN SELECT RAISE(ABORT, 'an earlier version is never changed'); END;
CREATE TRIGGER versions_are_kept BEFORE DELETE ON versions
  BEGIN SELECT RAISE(ABORT, 'an earlier version is never taken out'); END;
`;
