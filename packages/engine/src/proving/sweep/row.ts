import type { Block } from './block.ts'
import { type Foot, HAIR_MM, SAME_MM } from './foot.ts'
import { behind, type Profile, riseAt2 } from './profile.ts'

// Rows of cells over which a move is lowest within itself: cell c and every `stride`-th after it. These are the loops in
// which proving spends its time: figures come in an array, since figures handed from function to function are boxed.

/** Under a flat cutter on a level move: cells from c to end brought down to z. */
export function flatRow(block: Block, run: Float64Array, c: number, end: number, stride: number): void {
  const z = run[Z0]!
  const { top, taken } = block
  const limit = z + SAME_MM
  if (z < block.columns.alertMost) {
    for (; c <= end; c += stride) if (top[c]! > limit) block.cut(c, z)
    return
  }
  let sum = 0
  let most = 0
  for (; c <= end; c += stride) {
    const t = top[c]!
    if (t <= limit) continue
    sum += t - z
    if (t - z > most) {
      most = t - z
      if (most > taken[1]!) taken[2] = c
    }
    top[c] = z
  }
  taken[0] = taken[0]! + sum
  if (most > taken[1]!) taken[1] = most
}

/** Under a ball: h = z0 + m·s + R − √(R² − w²)·√(1 + m²) where that lies within the move. n cells from c on. */
export function ballRow(
  block: Block,
  p: Profile,
  run: Float64Array,
  c: number,
  stride: number,
  n: number
): void {
  let s = run[S]!
  let w = run[W]!
  const ds = run[DS]!
  const dw = run[DW]!
  const z0 = run[Z0]!
  const m = run[M]!
  const long = run[LONG]!
  const { top, taken } = block
  const { alertMost } = block.columns
  let sum = 0
  let deepest = taken[1]!
  const R = p.radius
  const R2 = R * R
  const lowest = m < 0 ? z0 + m * long : z0
  const e = Math.sqrt(1 + m * m)
  const b = m / e
  const base = z0 + R
  for (; n > 0; n--, c += stride, s += ds, w += dw) {
    const t = top[c]! - SAME_MM
    const d = t - lowest
    if (d <= 0) continue
    const rho2 = R2 - w * w
    if (rho2 < 0 || (d < R && rho2 <= (R - d) * (R - d))) continue
    const rho = Math.sqrt(rho2)
    const u = s - rho * b
    // Lowest beyond the end: the next has it, or the joint.
    if (u > long + HAIR_MM) continue
    let h = base + m * s - rho * e
    if (u < 0) {
      const left2 = rho2 - s * s
      if (left2 < 0) continue
      h = base - Math.sqrt(left2)
    }
    if (h >= t) continue
    if (h < alertMost) {
      block.cut(c, h)
      deepest = taken[1]!
      continue
    }
    const off = t - h
    sum += off
    if (off > deepest) {
      deepest = off
      taken[1] = off
      taken[2] = c
    }
    top[c] = h
  }
  taken[0] = taken[0]! + sum
}

/**
 * Under a cone: h = z0 + m·s + |w|·√(k² − m²) − k·tip/2 where that lies within the move and beside the blunt tip.
 */
export function coneRow(
  block: Block,
  p: Profile,
  run: Float64Array,
  c: number,
  stride: number,
  n: number
): void {
  let s = run[S]!
  let w = run[W]!
  const ds = run[DS]!
  const dw = run[DW]!
  const z0 = run[Z0]!
  const m = run[M]!
  const long = run[LONG]!
  const { top, taken } = block
  const { alertMost } = block.columns
  let sum = 0
  let deepest = taken[1]!
  const { slope, flat } = p
  const R2 = p.radius * p.radius
  const lowest = m < 0 ? z0 + m * long : z0
  const steep = Math.sqrt(slope * slope - m * m)
  const b = m / steep
  const base = z0 - flat * slope
  const perSlope = 1 / slope
  for (; n > 0; n--, c += stride, s += ds, w += dw) {
    const t = top[c]! - SAME_MM
    const beside = Math.abs(w)
    if (beside >= flat + (t - lowest) * perSlope || t <= lowest) continue
    let v = beside * b
    let h = base + m * s + beside * steep
    if (beside <= flat || beside * beside + v * v > R2 || v > s || s - v > long) {
      // At the blunt tip, at the outermost of the cutter, beyond an end.
      if (beside <= flat || beside * beside + v * v > R2) v = behind(p, m, w * w)
      let u = s - v
      if (u > long + HAIR_MM) continue
      if (u < 0) {
        u = 0
        v = s
      }
      const r2 = beside * beside + v * v
      if (r2 > R2 + HAIR_MM) continue
      const over = Math.sqrt(r2) - flat
      h = z0 + m * u + (over > 0 ? over * slope : 0)
    }
    if (h >= t) continue
    if (h < alertMost) {
      block.cut(c, h)
      deepest = taken[1]!
      continue
    }
    const d = t - h
    sum += d
    if (d > deepest) {
      deepest = d
      taken[1] = d
      taken[2] = c
    }
    top[c] = h
  }
  taken[0] = taken[0]! + sum
}

/** Under any cutter, cell by cell. */
export function anyRow(
  block: Block,
  foot: Foot,
  run: Float64Array,
  c: number,
  stride: number,
  n: number
): void {
  const { p } = foot
  let s = run[S]!
  let w = run[W]!
  const ds = run[DS]!
  const dw = run[DW]!
  const z0 = run[Z0]!
  const m = run[M]!
  const long = run[LONG]!
  const { top } = block
  const lowest = m < 0 ? z0 + m * long : z0
  const R2 = p.radius * p.radius
  for (; n > 0; n--, c += stride, s += ds, w += dw) {
    const t = top[c]! - SAME_MM
    if (t <= lowest) continue
    const w2 = w * w
    if (w2 > R2 + HAIR_MM) continue
    const u = Math.max(0, s - behind(p, m, w2))
    if (u > long + HAIR_MM) continue
    const v = s - u
    const r2 = v * v + w2
    if (r2 > R2 + HAIR_MM) continue
    const h = z0 + m * u + riseAt2(p, Math.min(R2, r2))
    if (h < t) foot.at(c, h, r2)
  }
}

// Places in the figures of a move: where it starts, its direction, length and slope, how far beyond its ends it reaches;
// of a row of cells: place along and beside it at the first, and what they grow by.
export const X0 = 0
export const Y0 = 1
export const Z0 = 2
export const UX = 3
export const UY = 4
export const LONG = 5
export const M = 6
export const MOST = 7
export const BACK = 8
export const S = 9
export const W = 10
export const DS = 11
export const DW = 12
