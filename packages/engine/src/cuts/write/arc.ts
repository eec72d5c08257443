import type { Move } from '../toolpath.ts'
import type { Numbers } from './number.ts'

/**
 * Arcs at the decimals of a program.
 *
 * RS274/NGC (NISTIR 6556, 3.5.3.2): the middle is given by I and J from the start of the arc; it is an error when the
 * radii to start and end differ by more than 0.0002 in or 0.002 mm, as they stand written. Start and end are rounded
 * each by itself, so the rounded middle may miss both: of the places about it on the grid of the decimals the one is
 * taken that keeps the rule and follows the arc best. Where none does, the arc is halved, then written as chords.
 *
 *   e = R·(1 − cos(δ/2))      a chord over the angle δ strays by e: δ = 2·acos(1 − e/R)
 *
 * Limits: what is written strays from the arc by at most the tolerance and one and a half steps of the decimals.
 * Source of the chord: machining.md B2 (closed form).
 */

/** A move as it is written, in the unit, rounded. */
export type Written =
  | { readonly kind: 'line'; readonly x: number; readonly y: number; readonly z: number }
  | {
      readonly kind: 'arc'
      readonly x: number
      readonly y: number
      readonly z: number
      readonly i: number
      readonly j: number
    }

interface Place {
  readonly x: number
  readonly y: number
  readonly z: number
}

export type Arc = Extract<Move, { kind: 'arc' }>

/** What start and end radius may differ by, mm and in, and the share of it that is used. */
const RADII = { mm: 0.002, in: 0.0002 } as const
const SHARE = 0.9
/** How far about the rounded middle a better one is looked for, steps. */
const ABOUT = 3
/** A turn that is nearly a full one is halved: rounding must not close it. */
const NEARLY_FULL = (350 / 180) * Math.PI
const MOST_SPLITS = 3
/** Smaller than this it is no arc on the grid of the decimals, steps. */
const LEAST_STEPS = 4
/** Greatest angle of one chord. */
const MOST_CHORD = Math.PI / 4
/** Two ends nearer than this are one, mm: the arc is a full turn. */
const SAME_MM = 1e-7
const SAMPLES = 8

/** Signed angle of an arc from its start, radians: positive counter-clockwise; ±2π for a full turn. */
export function sweepOf(from: { readonly x: number; readonly y: number }, arc: Arc): number {
  const full = arc.clockwise ? -2 * Math.PI : 2 * Math.PI
  if (Math.hypot(arc.x - from.x, arc.y - from.y) < SAME_MM) return full
  const turn = Math.atan2(arc.y - arc.cy, arc.x - arc.cx) - Math.atan2(from.y - arc.cy, from.x - arc.cx)
  const up = ((turn % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
  return arc.clockwise ? up - 2 * Math.PI : up
}

/**
 * An arc as arcs and lines of the program.
 *
 * @param from where the path stands, mm
 * @param at the same place as it stands written, in the unit
 * @param tolMm how far chords may stray
 */
export function writtenArc(
  from: Place,
  at: Place,
  arc: Arc,
  numbers: Numbers,
  tolMm: number,
  arcs: boolean
): Written[] {
  const fitter = new Fitter(from, at, arc, numbers, tolMm)
  if (arcs) fitter.arcs(0, 1, 0)
  else fitter.chords(0, 1)
  return fitter.out
}

class Fitter {
  readonly out: Written[] = []
  private at: Place
  private readonly angle: number
  private readonly sweep: number
  private readonly r0: number
  private readonly r1: number
  private readonly from: Place
  private readonly arc: Arc
  private readonly numbers: Numbers
  private readonly tolMm: number

  constructor(from: Place, at: Place, arc: Arc, numbers: Numbers, tolMm: number) {
    this.from = from
    this.at = at
    this.arc = arc
    this.numbers = numbers
    this.tolMm = tolMm
    this.sweep = sweepOf(from, arc)
    this.angle = Math.atan2(from.y - arc.cy, from.x - arc.cx)
    this.r0 = Math.hypot(from.x - arc.cx, from.y - arc.cy)
    this.r1 = Math.hypot(arc.x - arc.cx, arc.y - arc.cy)
  }

  /** The arc from the share `t0` of it to `t1`. */
  arcs(t0: number, t1: number, splits: number): void {
    const turn = Math.abs(this.sweep) * (t1 - t0)
    const whole = turn >= 2 * Math.PI - 1e-9
    const { step } = this.numbers
    if (!whole && turn > NEARLY_FULL) {
      this.halves(t0, t1, splits)
      return
    }
    const end = this.rounded(t1)
    const still = end.x === this.at.x && end.y === this.at.y
    const small = Math.max(this.r0, this.r1) / this.numbers.unitMm < LEAST_STEPS * step
    const middle = small || still !== whole ? null : this.middle(t0, t1, end)
    if (middle !== null) this.put({ kind: 'arc', ...end, ...middle })
    else if (!small && !still && splits < MOST_SPLITS) this.halves(t0, t1, splits)
    else this.chords(t0, t1)
  }

  chords(t0: number, t1: number): void {
    const r = Math.max(this.r0, this.r1)
    const one = r <= 0 ? MOST_CHORD : 2 * Math.acos(1 - Math.min(1, this.tolMm / r))
    const n = Math.max(1, Math.ceil((Math.abs(this.sweep) * (t1 - t0)) / Math.min(MOST_CHORD, one)))
    for (let k = 1; k <= n; k++) this.put({ kind: 'line', ...this.rounded(t0 + ((t1 - t0) * k) / n) })
  }

  private halves(t0: number, t1: number, splits: number): void {
    const mid = (t0 + t1) / 2
    this.arcs(t0, mid, splits + 1)
    this.arcs(mid, t1, splits + 1)
  }

  private put(move: Written): void {
    this.out.push(move)
    this.at = { x: move.x, y: move.y, z: move.z }
  }

  private middle(t0: number, t1: number, end: Place): { i: number; j: number } | null {
    const { numbers, arc, at } = this
    const most = Math.max(this.tolMm / numbers.unitMm, 1.5 * numbers.step)
    // In whole steps: a sum of steps is not on the grid.
    const i0 = Math.round(numbers.rounded(arc.cx - at.x * numbers.unitMm) / numbers.step)
    const j0 = Math.round(numbers.rounded(arc.cy - at.y * numbers.unitMm) / numbers.step)
    let i = i0 * numbers.step
    let j = j0 * numbers.step
    let least = this.strays(t0, t1, end, i, j, most)
    if (least <= most) return { i, j }
    for (let di = -ABOUT; di <= ABOUT; di++)
      for (let dj = -ABOUT; dj <= ABOUT; dj++) {
        const ni = (i0 + di) * numbers.step
        const nj = (j0 + dj) * numbers.step
        const next = this.strays(t0, t1, end, ni, nj, least)
        if (next >= least) continue
        least = next
        i = ni
        j = nj
      }
    return least <= most ? { i, j } : null
  }

  /**
   * How far the arc about i, j strays from the true one, in the unit; infinite where it breaks the rule of the radii.
   * More than `bound` is not looked into further.
   */
  private strays(t0: number, t1: number, end: Place, i: number, j: number, bound: number): number {
    const { at, numbers, arc } = this
    if (i === 0 && j === 0) return Number.POSITIVE_INFINITY
    const cx = at.x + i
    const cy = at.y + j
    const r = Math.hypot(i, j)
    const rEnd = Math.hypot(end.x - cx, end.y - cy)
    if (Math.abs(r - rEnd) > SHARE * RADII[numbers.unit]) return Number.POSITIVE_INFINITY
    const sweep = sweepOf(at, { ...arc, ...end, cx, cy })
    const a = Math.atan2(-j, -i)
    let most = 0
    for (let k = 1; k < SAMPLES && most <= bound; k++) {
      const s = k / SAMPLES
      const on = this.point(t0 + (t1 - t0) * s)
      const x = cx + (r + (rEnd - r) * s) * Math.cos(a + sweep * s)
      const y = cy + (r + (rEnd - r) * s) * Math.sin(a + sweep * s)
      most = Math.max(most, Math.hypot(on.x / numbers.unitMm - x, on.y / numbers.unitMm - y))
    }
    return most
  }

  private rounded(t: number): Place {
    const p = this.point(t)
    return { x: this.numbers.rounded(p.x), y: this.numbers.rounded(p.y), z: this.numbers.rounded(p.z) }
  }

  private point(t: number): Place {
    const { arc, from } = this
    // The ends themselves, not what the cosine makes of them.
    if (t === 1) return { x: arc.x, y: arc.y, z: arc.z }
    const r = this.r0 + (this.r1 - this.r0) * t
    const a = this.angle + this.sweep * t
    return { x: arc.cx + r * Math.cos(a), y: arc.cy + r * Math.sin(a), z: from.z + (arc.z - from.z) * t }
  }
}
