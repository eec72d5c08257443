import type { CoreInterval } from '../../stack/core.ts'
import { materialKey } from '../../stack/event.ts'
import type { Frame } from './frame.ts'

/** A stretch of one material in program coordinates. */
export interface Span {
  readonly from: number
  readonly to: number
  /** "timber 0", "pour 2". */
  readonly key: string
}

/** An interval in which cutting is reported: which of the watches, and its heights. */
export interface Watched {
  readonly watch: number
  readonly from: number
  readonly to: number
}

/** Less than this is no layer and no gap, mm. */
const HAIR_MM = 1e-6
/** A column with less left than this has been cut through, mm. */
const SKIN_MM = 0.15

/** A core turned into program coordinates, from high to low. */
export function spansOf(frame: Frame, core: readonly CoreInterval[]): Span[] {
  const { sz, zeroMm } = frame
  const out: Span[] = []
  for (const p of core) {
    const a = sz * (p.from - zeroMm)
    const b = sz * (p.to - zeroMm)
    const span = { from: Math.min(a, b), to: Math.max(a, b), key: materialKey(p.material) }
    if (span.to - span.from > HAIR_MM) out.push(span)
  }
  return out.sort((a, b) => b.from - a.from)
}

/**
 * The columns of a block: one for all cells of one kind, what stands there before the program and what is wanted after
 * it, in heights of the program. Kept as lists of figures: there may be hundreds of thousands.
 */
export class Columns {
  count = 0
  /** Top of what stands there, things that must not be cut included; the bed where nothing does. */
  top = new Float32Array(1024)
  /** Cut below this, something must be looked at: a watch, a hollow, the bed, the last of the column. */
  alert = new Float32Array(1024)
  /** Cut below this, next to nothing is left; −Infinity where nothing stands. */
  through = new Float32Array(1024)
  /** Top that is wanted; NaN where nothing is asked. */
  wanted = new Float32Array(1024)
  /** The highest of `alert`. */
  alertMost = Number.NEGATIVE_INFINITY

  private readonly bedMm: number
  private readonly deepMm: number
  private first = new Int32Array(1025)
  private from = new Float32Array(2048)
  private to = new Float32Array(2048)
  private key = new Uint16Array(2048)
  private readonly keys: string[] = []
  private readonly numberOf = new Map<string, number>()
  private readonly watched = new Map<number, readonly Watched[]>()

  /** @param bedMm height of what the piece lies on; @param deepMm how far below it the cutter may go */
  constructor(bedMm: number, deepMm: number) {
    this.bedMm = bedMm
    this.deepMm = deepMm
  }

  /** Adds a column: its stretches from high to low, and the top of what is fixed over it, if anything is. */
  add(spans: readonly Span[], wanted: number, watched: readonly Watched[], fixed: number): void {
    this.grow(spans.length)
    const k = this.count++
    let at = this.first[k]!
    let through = Number.NEGATIVE_INFINITY
    let left = SKIN_MM
    for (let n = spans.length - 1; n >= 0 && left > 0; n--) {
      const s = spans[n]!
      if (s.to - s.from >= left) through = s.from + left
      left -= s.to - s.from
    }
    let alert = Math.max(this.bedMm - this.deepMm, through)
    let roofed = false
    spans.forEach((s, n) => {
      this.from[at] = s.from
      this.to[at] = s.to
      this.key[at++] = this.numbered(s.key)
      if (!roofed && s.from - (spans[n + 1]?.to ?? this.bedMm) > HAIR_MM) {
        alert = Math.max(alert, s.from)
        roofed = true
      }
    })
    this.first[k + 1] = at
    if (watched.length > 0) {
      this.watched.set(k, watched)
      for (const w of watched) alert = Math.max(alert, w.to)
    }
    this.top[k] = Math.max(spans[0]?.to ?? this.bedMm, fixed)
    this.alert[k] = alert
    this.through[k] = through
    this.wanted[k] = wanted
    this.alertMost = Math.max(this.alertMost, this.alert[k]!)
  }

  /** What a column is made of, from high to low. */
  spans(k: number): Span[] {
    const out: Span[] = []
    for (let n = this.first[k]!; n < this.first[k + 1]!; n++)
      out.push({ from: this.from[n]!, to: this.to[n]!, key: this.keys[this.key[n]!]! })
    return out
  }

  /** Top of the piece in a column as it stood before the program, things that must not be cut left out. */
  pieceTop(k: number): number {
    const n = this.first[k]!
    return n < this.first[k + 1]! ? this.to[n]! : this.bedMm
  }

  watchedAt(k: number): readonly Watched[] {
    return this.watched.get(k) ?? NONE
  }

  /** Height of material between two heights, mm. */
  solidBetween(k: number, low: number, high: number): number {
    let sum = 0
    for (let n = this.first[k]!; n < this.first[k + 1]!; n++)
      sum += Math.max(0, Math.min(high, this.to[n]!) - Math.max(low, this.from[n]!))
    return sum
  }

  /** Where a column ends that is cut down to h: below the roof of a hollow at the floor of it. */
  endAt(k: number, h: number): number {
    const last = this.first[k + 1]!
    for (let n = this.first[k]!; n < last; n++) {
      const floor = n + 1 < last ? this.to[n + 1]! : this.bedMm
      if (h < this.from[n]! && h >= floor) return floor
    }
    return h
  }

  private numbered(key: string): number {
    const known = this.numberOf.get(key)
    if (known !== undefined) return known
    this.numberOf.set(key, this.keys.length)
    return this.keys.push(key) - 1
  }

  private grow(spans: number): void {
    if (this.count === this.top.length) {
      const n = 2 * this.count
      this.top = copied(new Float32Array(n), this.top)
      this.alert = copied(new Float32Array(n), this.alert)
      this.through = copied(new Float32Array(n), this.through)
      this.wanted = copied(new Float32Array(n), this.wanted)
      this.first = copied(new Int32Array(n + 1), this.first)
    }
    if (this.first[this.count]! + spans > this.from.length) {
      const n = 2 * this.from.length + spans
      this.from = copied(new Float32Array(n), this.from)
      this.to = copied(new Float32Array(n), this.to)
      this.key = copied(new Uint16Array(n), this.key)
    }
  }
}

const NONE: readonly Watched[] = []

function copied<T extends Float32Array | Int32Array | Uint16Array>(into: T, old: T): T {
  into.set(old)
  return into
}
