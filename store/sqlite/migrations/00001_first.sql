-- +goose Up
CREATE TABLE journal (
  revision INTEGER PRIMARY KEY,
  at       TEXT NOT NULL,            -- UTC, RFC 3339
  by       TEXT NOT NULL,
  what     TEXT NOT NULL,
  undoes   INTEGER REFERENCES journal (revision)
);

CREATE TABLE record (
  id         TEXT    NOT NULL,
  version    INTEGER NOT NULL,
  kind       TEXT    NOT NULL,
  body       TEXT    NOT NULL,       -- JSON; numbers in the unit that the data dictionary gives
  mark       TEXT    NOT NULL DEFAULT '',
  basis      TEXT    NOT NULL DEFAULT '',
  basis_note TEXT    NOT NULL DEFAULT '',
  basis_date TEXT    NOT NULL DEFAULT '',
  typed      TEXT,                   -- JSON; the text as it was typed, by field
  source     TEXT    NOT NULL DEFAULT '',
  at         TEXT    NOT NULL DEFAULT '',  -- UTC, RFC 3339; empty where a folder brought the record without one
  by         TEXT    NOT NULL DEFAULT '',
  withdrawn  INTEGER NOT NULL DEFAULT 0,
  standing   INTEGER NOT NULL DEFAULT 1,
  revision   INTEGER NOT NULL REFERENCES journal (revision),
  PRIMARY KEY (id, version)
) WITHOUT ROWID;

CREATE INDEX record_by_revision ON record (revision);

CREATE TABLE file (
  sha256     TEXT PRIMARY KEY,
  name       TEXT NOT NULL,
  media_type TEXT NOT NULL,
  size       INTEGER NOT NULL,
  at         TEXT NOT NULL
);

CREATE TABLE file_part (
  sha256 TEXT NOT NULL REFERENCES file (sha256),
  part   INTEGER NOT NULL,
  bytes  BLOB NOT NULL,
  PRIMARY KEY (sha256, part)
);

CREATE TABLE readme (line INTEGER PRIMARY KEY, text TEXT NOT NULL);
CREATE TABLE setting (name TEXT PRIMARY KEY, value TEXT NOT NULL);
