import { bounds } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { coreAt } from '../stack/core.ts'
import type { Stack } from '../stack/stack.ts'

/** Places round a hole that are looked at, and how far off its box, mm. */
const PLACES = 16
const BESIDE_MM = 1

/** What the walls of a hole are made of: shares of its circumference, 0 to 1, by index. */
export interface Walls {
  readonly timbers: ReadonlyMap<number, number>
  readonly pours: ReadonlyMap<number, number>
}

/** Places just outside the box of a hole. */
export function placesRound(region: Region): [number, number][] {
  const b = bounds(region)
  const [cx, cy] = [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2]
  const [hx, hy] = [(b.maxX - b.minX) / 2 + BESIDE_MM, (b.maxY - b.minY) / 2 + BESIDE_MM]
  return Array.from({ length: PLACES }, (_, k) => {
    const a = (2 * Math.PI * k) / PLACES
    const [c, s] = [Math.cos(a), Math.sin(a)]
    const out = 1 / Math.max(Math.abs(c), Math.abs(s))
    return [cx + hx * c * out, cy + hy * s * out]
  })
}

/** Places on both sides of a groove, in the middle of each of its stretches. */
export function placesBeside(lines: readonly Float64Array[], widthMm: number): [number, number][] {
  const out: [number, number][] = []
  const stretches = lines.reduce((n, line) => n + line.length / 2 - 1, 0)
  const every = Math.max(1, Math.ceil((2 * stretches) / PLACES))
  let nth = 0
  for (const line of lines)
    for (let k = 0; k + 3 < line.length; k += 2) {
      if (nth++ % every !== 0) continue
      const [dx, dy] = [line[k + 2]! - line[k]!, line[k + 3]! - line[k + 1]!]
      const off = (widthMm / 2 + BESIDE_MM) / (Math.hypot(dx, dy) || 1)
      const [mx, my] = [line[k]! + dx / 2, line[k + 1]! + dy / 2]
      out.push([mx - dy * off, my + dx * off], [mx + dy * off, my - dx * off])
    }
  return out
}

/**
 * Reads cores at places beside a hole, in the finished piece, between two heights: layers share a place by their
 * thickness.
 *
 * Limits: for a hole that is far from round or square the places lie off its walls; what stands there is taken.
 */
export function wallsAt(
  stack: Stack,
  at: readonly (readonly [number, number])[],
  fromZ: number,
  toZ: number
): Walls {
  const timbers = new Map<number, number>()
  const pours = new Map<number, number>()
  let places = 0
  for (const [x, y] of at) {
    const parts = coreAt(stack.geometry, stack.events, x, y).flatMap(p => {
      const mm = Math.min(p.to, toZ) - Math.max(p.from, fromZ)
      return mm > 0 && (p.material.kind === 'timber' || p.material.kind === 'pour')
        ? [{ kind: p.material.kind, index: p.material.index, mm }]
        : []
    })
    const total = parts.reduce((sum, p) => sum + p.mm, 0)
    if (total <= 0) continue
    places++
    for (const p of parts) {
      const map = p.kind === 'timber' ? timbers : pours
      map.set(p.index, (map.get(p.index) ?? 0) + p.mm / total)
    }
  }
  for (const map of [timbers, pours])
    for (const [index, share] of map) map.set(index, share / Math.max(1, places))
  return { timbers, pours }
}
