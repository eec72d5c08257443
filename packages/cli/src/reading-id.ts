import { randomBytes } from 'node:crypto'

/** An id of a reading taken at a moment (ISO 8601): sorted by time where it is listed, and no other's. */
export function newId(at: string): string {
  return `r-${new Date(Date.parse(at)).toISOString().slice(0, 19).replace(/[:T]/g, '-')}-${randomBytes(4).toString('hex')}`
}
