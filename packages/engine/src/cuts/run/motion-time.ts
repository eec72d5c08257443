import type { Toolpath } from '../toolpath.ts'
import type { MotionLimits, Segments } from './motion-segment.ts'
import { CUTTING, RAPID, STANDING, segmentsOf } from './motion-segment.ts'

/** How long a path takes on a machine. Minutes; ways in mm. */
export interface MotionTime {
  readonly minutes: number
  readonly byKind: { readonly cutting: number; readonly rapid: number; readonly standing: number }
  readonly cutMm: number
  readonly rapidMm: number
  /** Each pass of a path with its minutes; empty where none are named. */
  readonly passes: readonly { readonly name: string; readonly minutes: number }[]
  /** The pass that takes longest: what is lost at most when a run breaks off. null without passes. */
  readonly longest: { readonly name: string; readonly minutes: number } | null
}

/**
 * Time of a path on a machine that gains and loses speed evenly and looks ahead.
 *
 *   a   acceleration along the way                  mm/s²
 *   δ   how far a corner may be rounded             mm
 *   θ   angle between the two moves at a corner     π straight on
 *   v   speed in the corner                         mm/s
 *
 * A corner is passed on the circle that touches both moves and leaves the corner by δ: its radius is
 * R = δ·s/(1 − s) with s = sin(θ/2), and v² = a·R. The circle may touch no farther than the middle of the shorter
 * move: R ≤ (l/2)·tan(θ/2), so that a curve written as short lines is taken as the curve. Arcs: v² ≤ a·R. Between
 * corners speed rises and falls by a: v² = u² + 2·a·l, forward and then backward along the whole path; each move is a
 * triangle or a trapezoid of speed.
 *
 * Source: kinematics, derived here.
 * Check: closed forms of triangle and trapezoid, a square, a circle; no acceleration limit gives length/feed; a slow
 * walk in small steps along seeded paths gives the same.
 * Limits: one acceleration for all axes and no limit of its rate of change; the rounding itself shortens no way;
 * controllers that stop at every block take longer. A machine's own figures decide: time one program and set
 * `acceleration` by it.
 */
export function motionTime(path: Toolpath, machine: MotionLimits): MotionTime {
  const segments = segmentsOf(path.moves, machine)
  const seconds = secondsOf(segments, machine)
  const passes = path.passes.map(({ name, from }, i) => {
    const to = path.passes[i + 1]?.from ?? path.moves.length
    let sum = 0
    for (let k = from; k < to; k++) sum += seconds[k]!
    return { name, minutes: sum / 60 }
  })
  return { ...totals(segments, seconds), passes, longest: longestOf(passes) }
}

/** Time of segments that come from elsewhere, as of a program that was read. */
export function segmentsTime(segments: Segments, machine: MotionLimits): MotionTime {
  return { ...totals(segments, secondsOf(segments, machine)), passes: [], longest: null }
}

/** Time of several paths run one after the other, a change of cutter between those that ask for one. */
export function runMinutes(paths: readonly MotionTime[], changes: number, machine: MotionLimits): number {
  return paths.reduce((sum, p) => sum + p.minutes, 0) + changes * machine.change
}

/** Seconds of each segment. */
function secondsOf(s: Segments, { acceleration: a, corner }: MotionLimits): Float64Array {
  // A move of no length is passed over, so that it makes no corner.
  const real = new Uint32Array(s.count)
  let n = 0
  for (let i = 0; i < s.count; i++) if (s.lengthMm[i]! > 0 || s.kind[i] === STANDING) real[n++] = i
  // Speed at which each begins; one more for the end.
  const at = new Float64Array(n + 1)
  for (let k = 1; k < n; k++) at[k] = cornerSpeed(s, real[k - 1]!, real[k]!, a, corner)
  for (let k = 0; k < n; k++) at[k + 1] = Math.min(at[k + 1]!, gained(s, real[k]!, at[k]!, a))
  for (let k = n - 1; k >= 0; k--) at[k] = Math.min(at[k]!, gained(s, real[k]!, at[k + 1]!, a))
  const out = new Float64Array(s.count)
  for (let k = 0; k < n; k++) {
    const i = real[k]!
    const length = s.lengthMm[i]!
    out[i] = s.kind[i] === STANDING ? length : moveSeconds(length, at[k]!, at[k + 1]!, s.most[i]!, a)
  }
  return out
}

/** Seconds along a length, from speed u to w, never above `most`, gaining and losing by a. */
function moveSeconds(lengthMm: number, u: number, w: number, most: number, a: number): number {
  const peak = Math.min(most, Math.sqrt((2 * a * lengthMm + u * u + w * w) / 2))
  const even = lengthMm - (2 * peak * peak - u * u - w * w) / (2 * a)
  return (2 * peak - u - w) / a + Math.max(0, even) / peak
}

// Speed that may be had at the other end of a segment. A standing one has none at either end.
function gained(s: Segments, i: number, from: number, a: number): number {
  return s.kind[i] === STANDING ? 0 : Math.sqrt(from * from + 2 * a * s.lengthMm[i]!)
}

function cornerSpeed(s: Segments, i: number, j: number, a: number, corner: number): number {
  if (s.kind[i] === STANDING || s.kind[j] === STANDING) return 0
  const before = 6 * i + 3
  const after = 6 * j
  const { way } = s
  const along =
    way[before]! * way[after]! + way[before + 1]! * way[after + 1]! + way[before + 2]! * way[after + 2]!
  const most = Math.min(s.most[i]!, s.most[j]!)
  const sine = Math.sqrt(Math.max(0, (1 + along) / 2))
  if (sine > 1 - 1e-12) return most
  const cosine = Math.sqrt(1 - sine * sine)
  const shorter = Math.min(s.lengthMm[i]!, s.lengthMm[j]!)
  const radius = Math.min((corner * sine) / (1 - sine), ((shorter / 2) * sine) / cosine)
  return Math.min(most, Math.sqrt(a * radius))
}

function totals(s: Segments, seconds: Float64Array): Omit<MotionTime, 'passes' | 'longest'> {
  const sums = [0, 0, 0]
  const ways = [0, 0, 0]
  for (let i = 0; i < s.count; i++) {
    sums[s.kind[i]!]! += seconds[i]! / 60
    ways[s.kind[i]!]! += s.lengthMm[i]!
  }
  return {
    minutes: sums[RAPID]! + sums[CUTTING]! + sums[STANDING]!,
    byKind: { cutting: sums[CUTTING]!, rapid: sums[RAPID]!, standing: sums[STANDING]! },
    cutMm: ways[CUTTING]!,
    rapidMm: ways[RAPID]!
  }
}

function longestOf(passes: MotionTime['passes']): MotionTime['longest'] {
  return passes.reduce<MotionTime['longest']>((a, b) => (a === null || b.minutes > a.minutes ? b : a), null)
}
