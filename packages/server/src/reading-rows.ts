import type { OpenFolder } from './database.ts'

/** The readings of a piece as they were sent, in the order in which they came. */
export function readingsOf({ db }: OpenFolder, id: string): unknown[] {
  const rows = db.prepare('SELECT record FROM reading WHERE piece = ? ORDER BY saved, id').all(id) as {
    record: string
  }[]
  return rows.map(r => JSON.parse(r.record) as unknown)
}
