import type { Grid } from './grid-rows.ts'
import { crossing, pixelFrom, pixelX, pixelY, rowFrom } from './grid-rows.ts'
import type { Loft } from './loft.ts'

/** The slanted side of a timber seen over a grid. */
export interface SideGrid {
  /** How often the vertical line through each pixel pierces the side. */
  readonly times: Uint8Array
  /** Share of the height at which it does, the last time, 0..1. */
  readonly share: Float32Array
}

/**
 * Draws the strips of triangles of a slanted side: at every pixel how often, and at what share of its height, the
 * vertical line there pierces it. A triangle takes the pixels from its left edge to its right one, so that triangles
 * that share an edge share no pixel and leave none.
 */
export function sideGrid(g: Grid, lofts: readonly Loft[]): SideGrid {
  const times = new Uint8Array(g.nx * g.ny)
  const share = new Float32Array(g.nx * g.ny)
  for (const { lower, upper, i, j } of lofts) {
    for (let k = 0; k < i.length; k++) {
      const next = k + 1 === i.length ? 0 : k + 1
      const onLower = i[next] !== i[k]
      const a = { x: lower[2 * i[k]!]!, y: lower[2 * i[k]! + 1]!, t: 0 }
      const b = { x: upper[2 * j[k]!]!, y: upper[2 * j[k]! + 1]!, t: 1 }
      const c = onLower
        ? { x: lower[2 * i[next]!]!, y: lower[2 * i[next]! + 1]!, t: 0 }
        : { x: upper[2 * j[next]!]!, y: upper[2 * j[next]! + 1]!, t: 1 }
      triangle(g, a, b, c, times, share)
    }
  }
  return { times, share }
}

interface Corner {
  readonly x: number
  readonly y: number
  readonly t: number
}

function triangle(g: Grid, a: Corner, b: Corner, c: Corner, times: Uint8Array, share: Float32Array): void {
  const det = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y)
  if (det === 0) return
  // t over the triangle is a plane.
  const tx = ((b.t - a.t) * (c.y - a.y) - (c.t - a.t) * (b.y - a.y)) / det
  const ty = ((b.x - a.x) * (c.t - a.t) - (c.x - a.x) * (b.t - a.t)) / det
  const last = Math.min(g.ny, rowFrom(g, Math.max(a.y, b.y, c.y)))
  for (let row = Math.max(0, rowFrom(g, Math.min(a.y, b.y, c.y))); row < last; row++) {
    const y = pixelY(g, row)
    let left = Number.POSITIVE_INFINITY
    let right = Number.NEGATIVE_INFINITY
    for (const [p, q] of [
      [a, b],
      [b, c],
      [c, a]
    ] as const) {
      const [low, high] = p.y < q.y ? [p, q] : [q, p]
      if (!(low.y <= y && high.y > y)) continue
      const x = crossing({ ax: low.x, ay: low.y, bx: high.x, by: high.y }, y)
      if (x < left) left = x
      if (x > right) right = x
    }
    const to = Math.min(g.nx, pixelFrom(g, right))
    for (let i = Math.max(0, pixelFrom(g, left)); i < to; i++) {
      const at = row * g.nx + i
      times[at] = times[at]! + 1
      share[at] = Math.min(1, Math.max(0, a.t + (pixelX(g, i) - a.x) * tx + (y - a.y) * ty))
    }
  }
}
