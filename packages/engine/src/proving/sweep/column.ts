import type { CoreInterval } from '../../stack/core.ts'
import { materialKey } from '../../stack/event.ts'
import type { Frame } from './frame.ts'

/** A stretch of one material in program coordinates, from low to high. */
export interface Span {
  readonly from: number
  readonly to: number
  /** "timber 0", "pour 2". */
  readonly key: string
}

/** An interval in which cutting is reported: which of the block's watches, and its heights. */
export interface Watched {
  readonly watch: number
  readonly from: number
  readonly to: number
}

/** All cells of one kind: what stands there before the program, and what is wanted after it. Heights of the program. */
export interface Column {
  /** From high to low. */
  readonly spans: readonly Span[]
  /** Top of what stands there, things that must not be cut included; the bed where nothing does. */
  readonly top: number
  /** Air below material: [top, bottom], from high to low. */
  readonly gaps: readonly (readonly [top: number, bottom: number])[]
  readonly watched: readonly Watched[]
  /** Cut below this, next to nothing is left of the column. */
  readonly through: number
  /** Cut below this, something of the above must be looked at. */
  readonly alert: number
  /** Top that is wanted; NaN where nothing is asked of it. */
  readonly wanted: number
}

/** Less than this is no layer and no gap, mm. */
const HAIR_MM = 1e-6
/** A column with less left than this has been cut through, mm. */
const SKIN_MM = 0.15

/** A core turned into program coordinates, from high to low; neighbours of one material are one. */
export function spansOf(frame: Frame, core: readonly CoreInterval[]): Span[] {
  const { sz, zeroMm } = frame
  const out: Span[] = []
  for (const p of core) {
    const ends = [sz * (p.from - zeroMm), sz * (p.to - zeroMm)] as const
    const span = { from: Math.min(...ends), to: Math.max(...ends), key: materialKey(p.material) }
    if (span.to - span.from > HAIR_MM) out.push(span)
  }
  out.sort((a, b) => b.from - a.from)
  return out
}

/**
 * The facts of a column from what stands in it.
 *
 * @param bedMm  height of what the piece lies on
 * @param deepMm how far below it the cutter may go
 * @param fixed  what must not be cut and may stand above the material
 */
export function columnOf(
  spans: readonly Span[],
  wanted: number,
  watched: readonly Watched[],
  fixed: number,
  bedMm: number,
  deepMm: number
): Column {
  const gaps: [number, number][] = []
  spans.forEach((s, k) => {
    const below = spans[k + 1]?.to ?? bedMm
    if (s.from - below > HAIR_MM) gaps.push([s.from, below])
  })
  let through = Number.NEGATIVE_INFINITY
  let left = SKIN_MM
  for (let k = spans.length - 1; k >= 0; k--) {
    const s = spans[k]!
    if (s.to - s.from >= left) {
      through = s.from + left
      break
    }
    left -= s.to - s.from
  }
  const top = Math.max(spans[0]?.to ?? bedMm, fixed)
  const alert = Math.max(
    bedMm - deepMm,
    gaps[0]?.[0] ?? Number.NEGATIVE_INFINITY,
    through,
    ...watched.map(w => w.to)
  )
  return { spans, top, gaps, watched, through, alert, wanted }
}

/** Height of material between two heights, mm. */
export function solidBetween(spans: readonly Span[], low: number, high: number): number {
  let sum = 0
  for (const s of spans) sum += Math.max(0, Math.min(high, s.to) - Math.max(low, s.from))
  return sum
}
