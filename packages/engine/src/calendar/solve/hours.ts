import type { Opening } from '../task.ts'

/**
 * Opening hours as a clock of their own: where a task of so many minutes may start, and where it ends when it
 * pauses while the bench is closed.
 *
 * Openings are put in order, overlapping and touching ones joined, and trimmed to whole minutes (a part of a minute
 * at either end is not used). All answers are whole minutes where the openings are.
 */
export class Hours {
  readonly from: readonly number[]
  readonly to: readonly number[]
  // Open minutes before each opening.
  readonly #before: number[] = []
  readonly totalMin: number

  constructor(openings: readonly Opening[]) {
    const from: number[] = []
    const to: number[] = []
    for (const [a, b] of [...openings].sort((x, y) => x[0] - y[0])) {
      const lo = Math.ceil(a - 1e-9)
      const hi = Math.floor(b + 1e-9)
      if (!(hi > lo)) continue
      const last = to.length - 1
      if (last >= 0 && lo <= to[last]!) to[last] = Math.max(to[last]!, hi)
      else {
        from.push(lo)
        to.push(hi)
      }
    }
    let sum = 0
    for (let i = 0; i < from.length; i++) {
      this.#before.push(sum)
      sum += to[i]! - from[i]!
    }
    this.from = from
    this.to = to
    this.totalMin = sum
  }

  /** Last opening that begins at or before t; -1 before all. */
  #at(t: number): number {
    let lo = -1
    let hi = this.from.length - 1
    while (lo < hi) {
      const mid = (lo + hi + 1) >> 1
      if (this.from[mid]! <= t) lo = mid
      else hi = mid - 1
    }
    return lo
  }

  /** Open minutes up to t. */
  worked(t: number): number {
    const i = this.#at(t)
    return i < 0 ? 0 : this.#before[i]! + Math.min(t, this.to[i]!) - this.from[i]!
  }

  /** Earliest start not before t with `need` minutes open from it; Infinity when there is none. */
  nextStart(t: number, need: number): number {
    let i = this.#at(t)
    if (i >= 0 && this.to[i]! - t >= need) return t
    for (i++; i < this.from.length; i++) if (this.to[i]! - this.from[i]! >= need) return this.from[i]!
    return Number.POSITIVE_INFINITY
  }

  /** Latest start not after t with `need` minutes open from it; -Infinity when there is none. */
  prevStart(t: number, need: number): number {
    for (let i = this.#at(t); i >= 0; i--)
      if (this.to[i]! - this.from[i]! >= need) return Math.min(t, this.to[i]! - need)
    return Number.NEGATIVE_INFINITY
  }

  /** Moment at which `minutes` open minutes have gone by since s; Infinity when the openings end before. */
  endOfWork(s: number, minutes: number): number {
    if (minutes <= 0) return s
    const target = this.worked(s) + minutes
    if (target > this.totalMin + 1e-9) return Number.POSITIVE_INFINITY
    let lo = 0
    let hi = this.from.length - 1
    // First opening by whose end the target is worked.
    while (lo < hi) {
      const mid = (lo + hi) >> 1
      if (this.#before[mid]! + this.to[mid]! - this.from[mid]! >= target - 1e-9) hi = mid
      else lo = mid + 1
    }
    return this.from[lo]! + target - this.#before[lo]!
  }

  /** Latest start in an opening from which `minutes` open minutes (1 or more) go by until e at the latest. */
  startOfWork(e: number, minutes: number): number {
    return this.#startAt(this.worked(e) - minutes)
  }

  /** Earliest start in an opening from which `minutes` open minutes (1 or more) end at e or later; -Infinity: any. */
  startToEndAt(e: number, minutes: number): number {
    const i = this.#at(e)
    const inside = i >= 0 && e > this.from[i]! && e <= this.to[i]!
    const target = this.worked(e) - minutes + (inside ? 0 : 1)
    return target >= this.totalMin ? Number.POSITIVE_INFINITY : this.#startAt(target)
  }

  // The one moment in an opening, its end left out, by which that much has been open.
  #startAt(worked: number): number {
    if (worked < 0 || this.from.length === 0) return Number.NEGATIVE_INFINITY
    let lo = 0
    let hi = this.from.length - 1
    while (lo < hi) {
      const mid = (lo + hi + 1) >> 1
      if (this.#before[mid]! <= worked) lo = mid
      else hi = mid - 1
    }
    return this.from[lo]! + worked - this.#before[lo]!
  }

  /** The parts of a span that are open. */
  within(a: number, b: number): Opening[] {
    const out: Opening[] = []
    for (let i = Math.max(0, this.#at(a)); i < this.from.length && this.from[i]! < b; i++) {
      const lo = Math.max(a, this.from[i]!)
      const hi = Math.min(b, this.to[i]!)
      if (hi > lo) out.push([lo, hi])
    }
    return out
  }
}
