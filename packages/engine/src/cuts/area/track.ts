import { segmentDistance2, segmentShare } from '../../shape/edge-tree.ts'
import { bounds } from '../../shape/measure.ts'
import type { Ring } from '../../shape/region.ts'
import type { CutJob } from '../cut-job.ts'
import type { PathPen } from '../toolpath.ts'
import type { Span } from './arc-fit.ts'
import { arcsOf, linesOnly } from './arc-fit.ts'

/** A way of the middle of the cutter, in the order it goes: lines and arcs and how long they are, mm. */
export interface Track {
  readonly spans: readonly Span[]
  /** starts[i]: how far from the start span i begins; one more at the end. */
  readonly starts: Float64Array
  readonly lengthMm: number
}

/** Shorter arcs go as lines, mm. */
const LEAST_ARC_MM = 0.05

/** A place on a track and where it heads. */
interface Heading {
  readonly x: number
  readonly y: number
  readonly tx: number
  readonly ty: number
}

/** The track of spans in a row. */
export function trackOf(spans: readonly Span[]): Track {
  const starts = new Float64Array(spans.length + 1)
  spans.forEach((span, i) => {
    starts[i + 1] = starts[i]! + spanLength(span)
  })
  return { spans, starts, lengthMm: starts[spans.length]! }
}

/** A closed ring as a track from its first point on, fitted with half of the tolerance of the job. */
export function ringTrack(ring: Ring, job: CutJob): Track {
  const closed = new Float64Array(ring.length + 2)
  closed.set(ring)
  closed.set(ring.subarray(0, 2), ring.length)
  return lineTrack(closed, job)
}

/** An open line as a track, fitted likewise. */
export function lineTrack(line: Float64Array, job: CutJob): Track {
  return trackOf(job.arcs ? arcsOf(line, job.tolMm / 2) : linesOnly(line, job.tolMm / 2))
}

/** The ring with the place nearest to (x, y) as its first point. */
export function ringFrom(ring: Ring, x: number, y: number): Ring {
  const n = ring.length
  let best = 0
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k < n; k += 2) {
    const e = (k + 2) % n
    const d = segmentDistance2(ring[k]!, ring[k + 1]!, ring[e]!, ring[e + 1]!, x, y)
    if (d < least) {
      least = d
      best = k
    }
  }
  const next = (best + 2) % n
  const [ax, ay, bx, by] = [ring[best]!, ring[best + 1]!, ring[next]!, ring[next + 1]!]
  const t = segmentShare(ax, ay, bx, by, x, y)
  const rest = Float64Array.from([...ring.subarray(next), ...ring.subarray(0, next)])
  if (t >= 1) return rest
  if (t <= 0) return Float64Array.from([...ring.subarray(best), ...ring.subarray(0, best)])
  // The first of `rest` is the point after the new start, its last the point before.
  const out = new Float64Array(n + 2)
  out[0] = ax + t * (bx - ax)
  out[1] = ay + t * (by - ay)
  out.set(rest, 2)
  return out
}

/** The same ring the other way round. */
export function turnedRound(ring: Ring): Ring {
  const out = new Float64Array(ring.length)
  const n = ring.length
  for (let k = 0; k < n; k += 2) {
    out[k] = ring[n - 2 - k]!
    out[k + 1] = ring[n - 1 - k]!
  }
  return out
}

/** How wide a ring is at its widest, mm: the diagonal of its box. */
export function ringSpan(ring: Ring): number {
  const { minX, minY, maxX, maxY } = bounds({ rings: [ring] })
  return Math.hypot(maxX - minX, maxY - minY)
}

/** The place `atMm` along a track. Past its end a closed one goes on from its start. */
export function placeOn(track: Track, atMm: number): Heading {
  const s = wrapped(track, atMm)
  let i = spanAt(track, s)
  if (i >= track.spans.length) i = track.spans.length - 1
  return headingIn(track.spans[i]!, s - track.starts[i]!)
}

/** The spans of a closed track from one length to a later one, both from its start; more than once round if need be. */
export function stretch(track: Track, fromMm: number, toMm: number): Span[] {
  const out: Span[] = []
  let at = fromMm
  while (toMm - at > 1e-9) {
    const s = wrapped(track, at)
    const i = spanAt(track, s)
    const end = Math.min(track.starts[i + 1]!, s + (toMm - at))
    const piece = part(track.spans[i]!, s - track.starts[i]!, end - track.starts[i]!)
    if (piece !== null) out.push(piece)
    // A span shorter than the digits at hand is stepped over.
    at += Math.max(end - s, 1e-9)
  }
  return out
}

/** Runs along spans, the height going evenly from where the pen is to `z` over their whole length. */
export function runAlong(pen: PathPen, spans: readonly Span[], z: number, feedMmMin: number): void {
  const from = pen.z
  const total = spans.reduce((sum, s) => sum + spanLength(s), 0)
  let done = 0
  spans.forEach((span, i) => {
    done += spanLength(span)
    const to = i === spans.length - 1 ? z : from + ((z - from) * done) / total
    // Rounded to the digits of a program, a very short arc could end where it starts: a full turn.
    if (span.kind === 'line' || spanLength(span) < LEAST_ARC_MM) pen.line(span.x1, span.y1, to, feedMmMin)
    else pen.arc(span.x1, span.y1, to, span.cx, span.cy, span.clockwise, feedMmMin)
  })
}

/** Length of a span, mm. */
export function spanLength(span: Span): number {
  if (span.kind === 'line') return Math.hypot(span.x1 - span.x0, span.y1 - span.y0)
  return Math.abs(sweepOf(span)) * Math.hypot(span.x0 - span.cx, span.y0 - span.cy)
}

// Angle an arc turns by: positive counter-clockwise.
function sweepOf(span: Span & { kind: 'arc' }): number {
  const [px, py, qx, qy] = [span.x0 - span.cx, span.y0 - span.cy, span.x1 - span.cx, span.y1 - span.cy]
  const a = Math.atan2(px * qy - py * qx, px * qx + py * qy)
  if (span.clockwise) return a > 0 ? a - 2 * Math.PI : a
  return a < 0 ? a + 2 * Math.PI : a
}

function wrapped(track: Track, atMm: number): number {
  const s = atMm % track.lengthMm
  return s < 0 ? s + track.lengthMm : s
}

function spanAt(track: Track, s: number): number {
  let low = 0
  let high = track.spans.length - 1
  while (low < high) {
    const mid = (low + high + 1) >> 1
    if (track.starts[mid]! <= s) low = mid
    else high = mid - 1
  }
  return low
}

function headingIn(span: Span, mm: number): Heading {
  if (span.kind === 'line') {
    const long = spanLength(span)
    const [tx, ty] = [(span.x1 - span.x0) / long, (span.y1 - span.y0) / long]
    return { x: span.x0 + tx * mm, y: span.y0 + ty * mm, tx, ty }
  }
  const radius = Math.hypot(span.x0 - span.cx, span.y0 - span.cy)
  const turn = span.clockwise ? -1 : 1
  const a = Math.atan2(span.y0 - span.cy, span.x0 - span.cx) + (turn * mm) / radius
  return {
    x: span.cx + radius * Math.cos(a),
    y: span.cy + radius * Math.sin(a),
    tx: -turn * Math.sin(a),
    ty: turn * Math.cos(a)
  }
}

function part(span: Span, from: number, to: number): Span | null {
  const long = spanLength(span)
  if (!(to - from > 1e-9)) return null
  const a = from <= 1e-9 ? { x: span.x0, y: span.y0 } : headingIn(span, from)
  const b = to >= long - 1e-9 ? { x: span.x1, y: span.y1 } : headingIn(span, to)
  return { ...span, x0: a.x, y0: a.y, x1: b.x, y1: b.y }
}
