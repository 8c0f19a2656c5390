/**
 * Who may reach the station from another machine. Of its secret only a hash is kept.
 * Frozen: a book of this version may lie on someone's disk.
 */
export const devices = `
CREATE TABLE devices (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  secret_hash BLOB NOT NULL UNIQUE,
  paired TEXT NOT NULL,
  seen TEXT NOT NULL
) STRICT;
`;
