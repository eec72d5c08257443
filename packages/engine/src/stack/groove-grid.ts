import { bounds } from '../shape/measure.ts'
import type { Grid } from './grid-rows.ts'
import { pixelFrom, pixelX, pixelY, rowFrom } from './grid-rows.ts'

/**
 * Calls back with every pixel that lies within `reachMm` of some lines, once, with its distance from the nearest,
 * mm. Each stretch of a line looks at the box about it, so that cost follows the length of the lines.
 */
export function forNear(
  g: Grid,
  lines: readonly Float64Array[],
  reachMm: number,
  near: (pixel: number, distanceMm: number) => void
): void {
  const box = bounds({ rings: lines })
  const [i0, i1] = [
    Math.max(0, pixelFrom(g, box.minX - reachMm)),
    Math.min(g.nx, pixelFrom(g, box.maxX + reachMm))
  ]
  const [j0, j1] = [
    Math.max(0, rowFrom(g, box.minY - reachMm)),
    Math.min(g.ny, rowFrom(g, box.maxY + reachMm))
  ]
  const wide = i1 - i0
  if (wide <= 0 || j1 <= j0) return
  const least = new Float32Array(wide * (j1 - j0)).fill(Number.POSITIVE_INFINITY)
  const reach2 = reachMm * reachMm
  for (const line of lines) {
    for (let k = 0; k + 3 < line.length; k += 2) {
      const [ax, ay, bx, by] = [line[k]!, line[k + 1]!, line[k + 2]!, line[k + 3]!]
      const [dx, dy] = [bx - ax, by - ay]
      const long2 = dx * dx + dy * dy
      const lastRow = Math.min(j1, rowFrom(g, Math.max(ay, by) + reachMm))
      for (let j = Math.max(j0, rowFrom(g, Math.min(ay, by) - reachMm)); j < lastRow; j++) {
        const y = pixelY(g, j)
        const [low, high] = rangeAt(ax, ay, bx, by, y, reachMm)
        const last = Math.min(i1, pixelFrom(g, high))
        for (let i = Math.max(i0, pixelFrom(g, low)); i < last; i++) {
          const x = pixelX(g, i)
          const t = long2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long2))
          const d2 = (x - ax - t * dx) ** 2 + (y - ay - t * dy) ** 2
          if (d2 > reach2) continue
          const at = (j - j0) * wide + i - i0
          if (d2 < least[at]!) least[at] = d2
        }
      }
    }
  }
  for (let k = 0; k < least.length; k++) {
    if (least[k]! <= reach2) near((j0 + Math.floor(k / wide)) * g.nx + i0 + (k % wide), Math.sqrt(least[k]!))
  }
}

// What of a row lies within reach of a stretch, at most: the part of the stretch that the row can reach, and reach
// to either side.
function rangeAt(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  y: number,
  reach: number
): [low: number, high: number] {
  if (Math.abs(by - ay) < 1e-9) return [Math.min(ax, bx) - reach, Math.max(ax, bx) + reach]
  const share = (to: number) => Math.min(1, Math.max(0, (to - ay) / (by - ay)))
  const [p, q] = [share(y - reach), share(y + reach)]
  const [u, v] = [ax + p * (bx - ax), ax + q * (bx - ax)]
  return [Math.min(u, v) - reach, Math.max(u, v) + reach]
}
