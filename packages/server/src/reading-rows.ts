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
  open: OpenFolder,
  piece: string,
  readings: readonly KeptReading[],
  saved: string
): boolean[] {
  return open.db.transaction(() => inserted(open, piece, readings, saved))()
}

function inserted(
  { db }: OpenFolder,
  piece: string,
  readings: readonly KeptReading[],
  saved: string
): boolean[] {
  const insert = db.prepare(
    'INSERT INTO reading (id, piece, record, saved) VALUES (?, ?, ?, ?) ON CONFLICT (piece, id) DO NOTHING'
  )
  return readings.map(r => insert.run(r.id, piece, r.record, saved).changes > 0)
}

/** So long those who come together are waited for, ms: less than the disk takes. */
const GATHER_MS = 4

interface Waiting {
  readonly piece: string
  readonly readings: readonly KeptReading[]
  readonly saved: string
  readonly done: (fresh: boolean[]) => void
  readonly fail: (e: unknown) => void
}

/**
 * Keeps the readings of whoever asks at the same time in one transaction: the disk is flushed once for all of them, and
 * none is told before. Where one cannot be kept the others are kept by themselves.
 */
export class ReadingKeeper {
  private readonly open: OpenFolder
  private waiting: Waiting[] = []

  constructor(open: OpenFolder) {
    this.open = open
  }

  /** @returns which of them are new, once they are on the disk */
  keep(piece: string, readings: readonly KeptReading[], saved: string): Promise<boolean[]> {
    return new Promise((done, fail) => {
      if (this.waiting.length === 0) setTimeout(() => this.flush(), GATHER_MS)
      this.waiting.push({ piece, readings, saved, done, fail })
    })
  }

  private flush(): void {
    const all = this.waiting
    this.waiting = []
    const { open } = this
    let fresh: boolean[][]
    try {
      fresh = open.db.transaction(() => all.map(w => inserted(open, w.piece, w.readings, w.saved)))()
    } catch {
      for (const one of all) {
        try {
          one.done(keepReadings(open, one.piece, one.readings, one.saved))
        } catch (e) {
          one.fail(e)
        }
      }
      return
    }
    for (const [i, { done }] of all.entries()) done(fresh[i]!)
  }
}
