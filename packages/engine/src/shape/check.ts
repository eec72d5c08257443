import { difference, intersection } from './combine.ts'
import { area } from './measure.ts'
import type { Ring } from './region.ts'

/**
 * Where a ring crosses or touches itself, or null.
 *
 * Edges are put in the cells of a grid about as wide as the edges are long, so that each is held only against
 * its neighbours: near linear in the number of points. Orientation is judged on the numbers as they are;
 * neighbours that meet in their common point do not count, a fold back along itself does.
 */
export function selfCrossing(ring: Ring): { x: number; y: number } | null {
  const n = ring.length / 2
  if (n < 4) return null
  let minX = Number.POSITIVE_INFINITY
  let minY = Number.POSITIVE_INFINITY
  let maxX = Number.NEGATIVE_INFINITY
  let maxY = Number.NEGATIVE_INFINITY
  for (let k = 0; k < n; k++) {
    minX = Math.min(minX, ring[2 * k]!)
    maxX = Math.max(maxX, ring[2 * k]!)
    minY = Math.min(minY, ring[2 * k + 1]!)
    maxY = Math.max(maxY, ring[2 * k + 1]!)
  }
  const span = Math.max(maxX - minX, maxY - minY)
  if (!(span > 0)) return { x: minX, y: minY }
  const side = Math.max(1, Math.min(2048, Math.ceil(n / 3)))
  const cell = (span * 1.0001) / side
  const columns = Math.min(side, Math.floor((maxX - minX) / cell) + 1)
  const rows = Math.min(side, Math.floor((maxY - minY) / cell) + 1)
  const buckets = new Map<number, number[]>()
  for (let k = 0; k < n; k++) {
    const m = k + 1 === n ? 0 : k + 1
    const ax = ring[2 * k]!
    const ay = ring[2 * k + 1]!
    const bx = ring[2 * m]!
    const by = ring[2 * m + 1]!
    if (ax === bx && ay === by) continue
    const i0 = Math.floor((Math.min(ax, bx) - minX) / cell)
    const i1 = Math.min(columns - 1, Math.floor((Math.max(ax, bx) - minX) / cell))
    const j0 = Math.floor((Math.min(ay, by) - minY) / cell)
    const j1 = Math.min(rows - 1, Math.floor((Math.max(ay, by) - minY) / cell))
    for (let j = j0; j <= j1; j++) {
      for (let i = i0; i <= i1; i++) {
        // A long edge is put only in the cells its line passes.
        if (i1 - i0 > 1 && j1 - j0 > 1 && !passes(ax, ay, bx, by, minX + i * cell, minY + j * cell, cell))
          continue
        const key = j * columns + i
        const bucket = buckets.get(key)
        if (bucket === undefined) {
          buckets.set(key, [k])
          continue
        }
        for (const other of bucket) {
          const at = meet(ring, n, k, other)
          if (at) return at
        }
        bucket.push(k)
      }
    }
  }
  return null
}

function passes(ax: number, ay: number, bx: number, by: number, x: number, y: number, w: number): boolean {
  const dx = bx - ax
  const dy = by - ay
  // The corners of the cell, a hair larger, lie on both sides of the line.
  const e = w * 1e-9
  const s = [x - e, x + w + e].flatMap(px => [y - e, y + w + e].map(py => dx * (py - ay) - dy * (px - ax)))
  return Math.min(...s) <= 0 && Math.max(...s) >= 0
}

function meet(ring: Ring, n: number, p: number, q: number): { x: number; y: number } | null {
  const p1 = p + 1 === n ? 0 : p + 1
  const q1 = q + 1 === n ? 0 : q + 1
  const ax = ring[2 * p]!
  const ay = ring[2 * p + 1]!
  const bx = ring[2 * p1]!
  const by = ring[2 * p1 + 1]!
  const cx = ring[2 * q]!
  const cy = ring[2 * q + 1]!
  const dx = ring[2 * q1]!
  const dy = ring[2 * q1 + 1]!
  const neighbours = p1 === q || q1 === p || (bx === cx && by === cy) || (dx === ax && dy === ay)
  const side = (ox: number, oy: number, ux: number, uy: number, vx: number, vy: number) =>
    (ux - ox) * (vy - oy) - (vx - ox) * (uy - oy)
  const s1 = side(ax, ay, bx, by, cx, cy)
  const s2 = side(ax, ay, bx, by, dx, dy)
  const s3 = side(cx, cy, dx, dy, ax, ay)
  const s4 = side(cx, cy, dx, dy, bx, by)
  if (neighbours) {
    // Consecutive edges fold back when they run along one line in opposite ways.
    const along = (bx - ax) * (dx - cx) + (by - ay) * (dy - cy)
    return s1 === 0 && s2 === 0 && along < 0 ? (p1 === q ? { x: bx, y: by } : { x: ax, y: ay }) : null
  }
  if (((s1 > 0 && s2 < 0) || (s1 < 0 && s2 > 0)) && ((s3 > 0 && s4 < 0) || (s3 < 0 && s4 > 0))) {
    const t = s3 / (s3 - s4)
    return { x: ax + t * (bx - ax), y: ay + t * (by - ay) }
  }
  const on = (px: number, py: number, ux: number, uy: number, vx: number, vy: number) =>
    Math.min(ux, vx) <= px && px <= Math.max(ux, vx) && Math.min(uy, vy) <= py && py <= Math.max(uy, vy)
  if (s1 === 0 && on(cx, cy, ax, ay, bx, by)) return { x: cx, y: cy }
  if (s2 === 0 && on(dx, dy, ax, ay, bx, by)) return { x: dx, y: dy }
  if (s3 === 0 && on(ax, ay, cx, cy, dx, dy)) return { x: ax, y: ay }
  if (s4 === 0 && on(bx, by, cx, cy, dx, dy)) return { x: bx, y: by }
  return null
}

/** Least area, mm², by which a hole may leave its outline before it counts: a hair of drawing. */
const STRAY_MM2 = 1e-3

/** The first hole that is not wholly inside the outline, or shares area with a hole before it; else null. */
export function holesOutside(outer: Ring, holes: readonly Ring[]): number | null {
  const one = (ring: Ring) => ({ rings: [area({ rings: [ring] }) < 0 ? flip(ring) : ring] })
  const outline = one(outer)
  for (let i = 0; i < holes.length; i++) {
    const hole = one(holes[i]!)
    if (area(difference(hole, outline)) > STRAY_MM2) return i
    for (let j = 0; j < i; j++) if (area(intersection(hole, one(holes[j]!))) > STRAY_MM2) return i
  }
  return null
}

function flip(ring: Ring): Ring {
  const out = new Float64Array(ring.length)
  for (let k = 0; k < ring.length; k += 2) {
    out[k] = ring[ring.length - 2 - k]!
    out[k + 1] = ring[ring.length - 1 - k]!
  }
  return out
}
