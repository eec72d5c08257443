import { DrawingError } from './drawing-error.ts'

/** Where in an SVG text something stands; both count from 1. */
export interface Place {
  readonly line: number
  readonly column: number
}

/**
 * An SVG file that cannot be used. The message says where, what was found and what is allowed:
 * `line 7: r="-3"; allowed: 0 or more`.
 */
export class SvgError extends Error {
  override name = 'SvgError'
  readonly line: number
  readonly column: number

  constructor(place: Place, says: string) {
    super(`line ${place.line}: ${says}`)
    this.line = place.line
    this.column = place.column
  }
}

/** The start of a file, for what concerns all of it. */
export const START: Place = { line: 1, column: 1 }

/** Does `work`; a drawing error in it becomes an {@link SvgError} at `place`, its text after `before`. */
export function placed<T>(place: Place, before: string, work: () => T): T {
  try {
    return work()
  } catch (e) {
    if (!(e instanceof DrawingError)) throw e
    throw new SvgError(place, `${before}${e.message}`)
  }
}
