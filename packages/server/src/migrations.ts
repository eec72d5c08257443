/**
 * Schemas of the database, one step a version; `user_version` says which one a file has. A step is never changed
 * once it was released: a change is a new step, and every file is backed up before steps are taken on it.
 */
export const MIGRATIONS: readonly string[] = [
  `
  CREATE TABLE piece (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    kind TEXT,
    revision INTEGER NOT NULL,
    saved TEXT NOT NULL,
    away TEXT
  ) STRICT;
  CREATE TABLE revision (
    piece TEXT NOT NULL REFERENCES piece(id),
    number INTEGER NOT NULL,
    edit TEXT NOT NULL,
    document TEXT NOT NULL,
    says TEXT NOT NULL,
    device TEXT,
    saved TEXT NOT NULL,
    PRIMARY KEY (piece, number)
  ) STRICT;
  CREATE UNIQUE INDEX revision_edit ON revision (piece, edit);
  CREATE TABLE aside (
    piece TEXT NOT NULL REFERENCES piece(id),
    number INTEGER NOT NULL,
    edit TEXT NOT NULL,
    base INTEGER NOT NULL,
    document TEXT NOT NULL,
    device TEXT,
    saved TEXT NOT NULL,
    settled INTEGER NOT NULL DEFAULT 0,
    PRIMARY KEY (piece, number)
  ) STRICT;
  CREATE UNIQUE INDEX aside_edit ON aside (piece, edit);
  CREATE TABLE file (
    piece TEXT NOT NULL REFERENCES piece(id),
    name TEXT NOT NULL,
    text TEXT NOT NULL,
    saved TEXT NOT NULL,
    PRIMARY KEY (piece, name)
  ) STRICT;
  CREATE TABLE shop (
    number INTEGER PRIMARY KEY,
    edit TEXT NOT NULL UNIQUE,
    document TEXT NOT NULL,
    device TEXT,
    saved TEXT NOT NULL
  ) STRICT;
  CREATE TABLE photo (
    id TEXT NOT NULL,
    piece TEXT NOT NULL REFERENCES piece(id),
    type TEXT NOT NULL,
    width INTEGER NOT NULL,
    height INTEGER NOT NULL,
    bytes BLOB NOT NULL,
    laid TEXT,
    saved TEXT NOT NULL,
    PRIMARY KEY (piece, id)
  ) STRICT;
  CREATE TABLE reading (
    id TEXT NOT NULL,
    piece TEXT NOT NULL REFERENCES piece(id),
    record TEXT NOT NULL,
    saved TEXT NOT NULL,
    PRIMARY KEY (piece, id)
  ) STRICT;
  CREATE TABLE device (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    token TEXT NOT NULL UNIQUE,
    paired TEXT NOT NULL,
    seen TEXT NOT NULL
  ) STRICT;
  `,
  // A shop that was changed on two devices at once: the later one is kept aside, as of a piece.
  `
  CREATE TABLE shop_aside (
    number INTEGER PRIMARY KEY,
    edit TEXT NOT NULL UNIQUE,
    base INTEGER NOT NULL,
    document TEXT NOT NULL,
    device TEXT,
    saved TEXT NOT NULL,
    settled INTEGER NOT NULL DEFAULT 0
  ) STRICT;
  `
]
