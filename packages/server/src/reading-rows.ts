import type { OpenFolder } from './database.ts'

/** The readings of a piece as they were sent, in the order in which they came. */
export function readingsOf({ db }: OpenFolder, id: string): unknown[] {
  const rows = db.prepare('SELECT record FROM reading WHERE piece = ? ORDER BY rowid').all(id) as {
    record: string
  }[]
  return rows.map(r => JSON.parse(r.record) as unknown)
}

/** Readings with the number up to which they reach: what comes after it is asked for by that. */
export interface ReadingsSince {
  readonly readings: readonly unknown[]
  readonly upTo: number
}

/** The readings of a piece that came after `since`, in the order in which they came. */
export function readingsSince({ db }: OpenFolder, id: string, since: number): ReadingsSince {
  const rows = db
    .prepare('SELECT rowid AS n, record FROM reading WHERE piece = ? AND rowid > ? ORDER BY rowid')
    .all(id, since) as { n: number; record: string }[]
  return { readings: rows.map(r => JSON.parse(r.record) as unknown), upTo: rows.at(-1)?.n ?? since }
}

/** A reading to be kept: its id, and the record as it was sent. */
export interface KeptReading {
  readonly id: string
  readonly record: string
}

/**
 * Keeps readings, all of them or none; those that are there already stay as they were. Once this returns they are on
 * the disk: one transaction with the log of the database flushed. @returns which of them are new
 */
export function keepReadings(
  { db }: OpenFolder,
  piece: string,
  readings: readonly KeptReading[],
  saved: string
): boolean[] {
  const insert = db.prepare(
    'INSERT INTO reading (id, piece, record, saved) VALUES (?, ?, ?, ?) ON CONFLICT (piece, id) DO NOTHING'
  )
  return db.transaction(() => readings.map(r => insert.run(r.id, piece, r.record, saved).changes > 0))()
}
