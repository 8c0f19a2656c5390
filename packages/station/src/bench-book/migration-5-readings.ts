/**
 * Instruments and what they read, in packed blocks. Readings are only ever added; an instrument may change its name and be
 * switched, but what it counts in stays. The index holds all that a view from afar needs, so that it opens no block.
 * Frozen: a book of this version may lie on someone's disk.
 */
export const readings = `
CREATE TABLE instruments (
  id TEXT PRIMARY KEY,
  kind TEXT NOT NULL,
  unit TEXT NOT NULL,
  name TEXT NOT NULL,
  setup TEXT NOT NULL CHECK (json_valid(setup)),
  floor REAL,
  saturation REAL,
  is_on INTEGER NOT NULL CHECK (is_on IN (0, 1)),
  put_away INTEGER NOT NULL CHECK (put_away IN (0, 1))
) STRICT;
CREATE TRIGGER instruments_count_alike BEFORE UPDATE OF id, kind, unit ON instruments
  BEGIN SELECT RAISE(ABORT, 'an instrument stays what it is'); END;
CREATE TRIGGER instruments_are_kept BEFORE DELETE ON instruments
  BEGIN SELECT RAISE(ABORT, 'an instrument is never taken out'); END;

CREATE TABLE reading_blocks (
  rank INTEGER PRIMARY KEY AUTOINCREMENT,
  instrument TEXT NOT NULL REFERENCES instruments (id),
  "write" TEXT UNIQUE,
  first REAL NOT NULL,
  last REAL NOT NULL,
  count INTEGER NOT NULL,
  gaps INTEGER NOT NULL,
  saturated INTEGER NOT NULL,
  min REAL,
  max REAL,
  mean REAL,
  packed BLOB NOT NULL
) STRICT;
CREATE INDEX reading_blocks_in_time
  ON reading_blocks (instrument, first, last, count, gaps, saturated, min, max, mean);
CREATE TRIGGER reading_blocks_stay BEFORE UPDATE ON reading_blocks
  BEGIN SELECT RAISE(ABORT, 'a reading is never changed'); END;
CREATE TRIGGER reading_blocks_are_kept BEFORE DELETE ON reading_blocks
  BEGIN SELECT RAISE(ABORT, 'a reading is never taken out'); END;
`;
