import { Failure } from './failure.ts'

const FORM = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?(Z|[+-]\d{2}:\d{2})$/

/** The moment asked for, else this one: ISO 8601 with offset. @throws Failure for what is no moment */
export function momentOf(asked: string | undefined, now = new Date()): string {
  if (asked === undefined) return withOffset(now)
  const day = Number(asked.slice(8, 10))
  const real = FORM.test(asked) && Number.isFinite(Date.parse(asked))
  // Date.parse takes the 31st of February for a day of March.
  if (!real || new Date(`${asked.slice(0, 10)}T00:00Z`).getUTCDate() !== day)
    throw new Failure(
      `--as-of: found "${asked}"; allowed: a moment with its offset, for example 2026-12-05T09:00+01:00`
    )
  return asked
}

function withOffset(at: Date): string {
  const offset = -at.getTimezoneOffset()
  const two = (x: number) => String(x).padStart(2, '0')
  const local = new Date(at.getTime() + offset * 60_000).toISOString().slice(0, 16)
  return `${local}${offset < 0 ? '-' : '+'}${two(Math.floor(Math.abs(offset) / 60))}:${two(Math.abs(offset) % 60)}`
}
