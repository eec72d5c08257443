import type { Place } from './svg-error.ts'

/** Something that was not drawn as SVG would, and why. */
export interface Skipped {
  readonly what: string
  readonly why: string
  readonly line: number
}

/** Longest list of what was skipped. */
const MOST_SKIPPED = 1000

/** Gathers what was skipped: each thing once however often it is copied, and no more than a reader can use. */
export class SkippedList {
  readonly #entries = new Map<string, Skipped>()
  #unlisted = 0

  add(at: Place, what: string, why: string): void {
    const key = `${at.line}:${at.column}:${what}`
    if (this.#entries.has(key)) return
    if (this.#entries.size < MOST_SKIPPED) this.#entries.set(key, { what, why, line: at.line })
    else this.#unlisted++
  }

  /** The entries; a last one says how many more there were. */
  list(): Skipped[] {
    const list = [...this.#entries.values()]
    if (this.#unlisted > 0) list.push({ what: `${this.#unlisted} more`, why: 'the list is full', line: 1 })
    return list
  }
}
