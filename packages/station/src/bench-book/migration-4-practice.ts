/**
 * What was done at a practice bench, in its order; done again it brings the bench to where it was. Only what was answered
 * is an entry. Frozen: a book of this version may lie on someone's disk.
 */
export const practice = `
CREATE TABLE practice_acts (
  rank INTEGER PRIMARY KEY AUTOINCREMENT,
  "write" TEXT NOT NULL UNIQUE,
  walk TEXT NOT NULL REFERENCES entries (id),
  act TEXT NOT NULL CHECK (json_valid(act))
) STRICT;
CREATE INDEX practice_acts_of_a_walk ON practice_acts (walk, rank);
`;
