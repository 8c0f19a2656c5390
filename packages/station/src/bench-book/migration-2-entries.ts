/**
 * What was done and read; a change may now be an entry as well. Frozen: a book of this version may lie on someone's disk.
 */
export const entries = `
CREATE TABLE entries (
  rank INTEGER PRIMARY KEY AUTOINCREMENT,
  id TEXT NOT NULL UNIQUE,
  time TEXT NOT NULL,
  kind TEXT NOT NULL,
  launch TEXT REFERENCES documents (id),
  data TEXT NOT NULL CHECK (json_valid(data))
) STRICT;
CREATE INDEX entries_of_a_launch ON entries (launch, rank);

CREATE TRIGGER entries_stay BEFORE UPDATE ON entries
  BEGIN SELECT RAISE(ABORT, 'an entry is never changed'); END;
CREATE TRIGGER entries_are_kept BEFORE DELETE ON entries
  BEGIN SELECT RAISE(ABORT, 'an entry is never taken out'); END;

ALTER TABLE changes RENAME TO changes_of_documents;
CREATE TABLE changes (
  sequence INTEGER PRIMARY KEY AUTOINCREMENT,
  "write" TEXT NOT NULL UNIQUE,
  document TEXT,
  version INTEGER,
  entry TEXT REFERENCES entries (id),
  FOREIGN KEY (document, version) REFERENCES versions (document, version),
  CHECK ((document IS NULL) = (version IS NULL) AND (document IS NULL) <> (entry IS NULL))
) STRICT;
INSERT INTO changes (sequence, "write", document, version)
  SELECT sequence, "write", document, version FROM changes_of_documents ORDER BY sequence;
DROP TABLE changes_of_documents;
`;
