import type { Region } from '../shape/region.ts'

/** Pixels over the plan: row by row from the least y, each from the least x. */
export interface Grid {
  readonly nx: number
  readonly ny: number
  /** Side of a pixel, mm. */
  readonly pixelMm: number
  /** Corner of the first pixel, mm on the plan. */
  readonly x0: number
  readonly y0: number
}

/** Pixels are looked at a hair beside their middles, mm, so that no edge of round figures runs through them. */
const ASIDE_MM = 1.37e-7

/** The place at which pixel i of a row is looked at, mm. */
export function pixelX(g: Grid, i: number): number {
  return g.x0 + (i + 0.5) * g.pixelMm + ASIDE_MM
}

/** The place at which row j is looked at, mm. */
export function pixelY(g: Grid, j: number): number {
  return g.y0 + (j + 0.5) * g.pixelMm + ASIDE_MM
}

/**
 * Calls back with every run of pixels whose places lie in the region: row, first pixel, one past the last. Runs come
 * by rows. Windings count as in `inside` (non-zero); edges meet at equal crossings, so that regions that share an edge
 * share no pixel and leave none.
 *
 *   x = a_x + (y − a_y)·(b_x − a_x)/(b_y − a_y)     from the lower end a to the upper end b, whichever way it runs
 */
export function forRuns(g: Grid, region: Region, run: (row: number, from: number, to: number) => void): void {
  const edges: Edge[] = []
  const [lowest, highest] = [pixelY(g, 0), pixelY(g, g.ny - 1)]
  for (const ring of region.rings) {
    for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2) {
      const [ax, ay, bx, by] = [ring[p]!, ring[p + 1]!, ring[k]!, ring[k + 1]!]
      if (ay === by) continue
      // Beside the grid: no row looks at it.
      if (Math.max(ay, by) <= lowest || Math.min(ay, by) > highest) continue
      edges.push(ay < by ? { ax, ay, bx, by, turn: 1 } : { ax: bx, ay: by, bx: ax, by: ay, turn: -1 })
    }
  }
  edges.sort((a, b) => a.ay - b.ay)
  const first = edges[0]
  if (first === undefined) return
  let next = 0
  let live: Edge[] = []
  const hits: { x: number; turn: number }[] = []
  for (let j = Math.max(0, rowFrom(g, first.ay)); j < g.ny; j++) {
    const y = pixelY(g, j)
    while (next < edges.length && edges[next]!.ay <= y) live.push(edges[next++]!)
    live = live.filter(e => e.by > y)
    if (live.length === 0) {
      if (next === edges.length) return
      continue
    }
    hits.length = 0
    for (const e of live) hits.push({ x: crossing(e, y), turn: e.turn })
    hits.sort((a, b) => a.x - b.x)
    let winding = 0
    let begin = 0
    for (const { x, turn } of hits) {
      if (winding === 0) begin = x
      winding += turn
      if (winding !== 0) continue
      const from = Math.max(0, pixelFrom(g, begin))
      const to = Math.min(g.nx, pixelFrom(g, x))
      if (to > from) run(j, from, to)
    }
  }
}

interface Edge {
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
  readonly turn: 1 | -1
}

/** Where an edge from a up to b meets the level y, mm. */
export function crossing(
  e: { readonly ax: number; readonly ay: number; readonly bx: number; readonly by: number },
  y: number
): number {
  return e.ax + ((y - e.ay) * (e.bx - e.ax)) / (e.by - e.ay)
}

/** The first pixel of a row that is looked at right of x. */
export function pixelFrom(g: Grid, x: number): number {
  return Math.ceil((x - g.x0 - ASIDE_MM) / g.pixelMm - 0.5)
}

/** The first row that is looked at above y. */
export function rowFrom(g: Grid, y: number): number {
  return Math.ceil((y - g.y0 - ASIDE_MM) / g.pixelMm - 0.5)
}
