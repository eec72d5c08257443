import type { CutterShape } from '../../../src/catalogue/cutter-shape.ts'
import type { CutJob, NoPath } from '../../../src/cuts/cut-job.ts'
import type { Move, Toolpath } from '../../../src/cuts/toolpath.ts'
import type { EdgeTree } from '../../../src/shape/edge-tree.ts'
import { edgeDistance, edgeTree } from '../../../src/shape/edge-tree.ts'
import { inside } from '../../../src/shape/measure.ts'
import type { Region } from '../../../src/shape/region.ts'

/** A flat cutter of a diameter that may go straight down. */
export const flat = (diameterMm: number, more: Partial<CutterShape> = {}): CutterShape => ({
  form: 'flat',
  diameterMm,
  cornerMm: 0,
  angleDeg: 180,
  tipMm: 0,
  fluteMm: 40,
  shankMm: diameterMm,
  reachMm: 50,
  holderMm: 40,
  headMm: 0,
  neckMm: 0,
  plunges: true,
  ...more
})

/** Material from 0 to −depth, crossed at 5. */
export function job(
  cutter: CutterShape,
  depthMm: number,
  feeds: Partial<CutJob['feeds']> = {},
  more: Partial<CutJob> = {}
): CutJob {
  return {
    cutter,
    feeds: {
      rpm: 18000,
      feedMmMin: 1500,
      plungeMmMin: 400,
      rampMmMin: 700,
      rampDeg: 3,
      depthMm: 4,
      stepMm: cutter.diameterMm * 0.4,
      allowanceMm: 0,
      climb: true,
      why: [],
      ...feeds
    },
    topMm: 0,
    floorMm: -depthMm,
    clearMm: 5,
    tolMm: 0.04,
    arcs: true,
    ...more
  }
}

export function pathOf(path: Toolpath | NoPath): Toolpath {
  if ('says' in path) throw new Error(path.says)
  return path
}

/** A place of the tip, and whether it came there at rapid speed. */
export interface Tip {
  readonly x: number
  readonly y: number
  readonly z: number
  readonly rapid: boolean
}

/** The tip along all moves, a step of at most `everyMm` after the other: written without the code under test. */
export function tipsOf(moves: readonly Move[], everyMm: number): Tip[] {
  const out: Tip[] = []
  let [x, y, z] = [Number.NaN, Number.NaN, Number.NaN]
  for (const m of moves) {
    if (m.kind === 'dwell') continue
    const rapid = m.kind === 'rapid'
    if (Number.isNaN(x)) out.push({ x: m.x, y: m.y, z: m.z, rapid })
    else if (m.kind === 'arc') {
      const radius = Math.hypot(x - m.cx, y - m.cy)
      const a0 = Math.atan2(y - m.cy, x - m.cx)
      let sweep = Math.atan2(m.y - m.cy, m.x - m.cx) - a0
      if (m.clockwise) while (sweep >= -1e-9) sweep -= 2 * Math.PI
      else while (sweep <= 1e-9) sweep += 2 * Math.PI
      const n = Math.max(1, Math.ceil((Math.abs(sweep) * radius) / everyMm))
      for (let k = 1; k <= n; k++) {
        const a = a0 + (sweep * k) / n
        out.push({
          x: m.cx + radius * Math.cos(a),
          y: m.cy + radius * Math.sin(a),
          z: z + ((m.z - z) * k) / n,
          rapid
        })
      }
    } else {
      const n = Math.max(1, Math.ceil(Math.hypot(m.x - x, m.y - y, m.z - z) / everyMm))
      for (let k = 1; k <= n; k++)
        out.push({
          x: x + ((m.x - x) * k) / n,
          y: y + ((m.y - y) * k) / n,
          z: z + ((m.z - z) * k) / n,
          rapid
        })
    }
    ;[x, y, z] = [m.x, m.y, m.z]
  }
  return out
}

/** Lowest height of the tip of a flat cutter that came over each place of a grid: a picture of what is left. */
export interface Painted {
  readonly columns: number
  readonly rows: number
  readonly x0: number
  readonly y0: number
  readonly cellMm: number
  readonly z: Float64Array
}

/** Paints discs of the cutter's radius along the way. */
export function painted(
  moves: readonly Move[],
  radiusMm: number,
  box: readonly [number, number, number, number],
  cellMm = 0.2
): Painted {
  const [x0, y0, x1, y1] = box
  const columns = Math.ceil((x1 - x0) / cellMm)
  const rows = Math.ceil((y1 - y0) / cellMm)
  const z = new Float64Array(columns * rows).fill(Number.POSITIVE_INFINITY)
  for (const tip of tipsOf(moves, radiusMm / 8)) {
    // Over the work: all tests begin at 0.
    if (tip.z >= 0) continue
    const rowFrom = Math.max(0, Math.ceil((tip.y - radiusMm - y0) / cellMm - 0.5))
    const rowTo = Math.min(rows - 1, Math.floor((tip.y + radiusMm - y0) / cellMm - 0.5))
    for (let row = rowFrom; row <= rowTo; row++) {
      const dy = y0 + (row + 0.5) * cellMm - tip.y
      const half = Math.sqrt(Math.max(0, radiusMm ** 2 - dy ** 2))
      const from = Math.max(0, Math.ceil((tip.x - half - x0) / cellMm - 0.5))
      const to = Math.min(columns - 1, Math.floor((tip.x + half - x0) / cellMm - 0.5))
      for (let k = row * columns + from; k <= row * columns + to; k++) if (tip.z < z[k]!) z[k] = tip.z
    }
  }
  return { columns, rows, x0, y0, cellMm, z }
}

/** Asks of every place of the picture. */
export function eachPlace(p: Painted, visit: (x: number, y: number, z: number) => void): void {
  for (let row = 0; row < p.rows; row++)
    for (let column = 0; column < p.columns; column++)
      visit(p.x0 + (column + 0.5) * p.cellMm, p.y0 + (row + 0.5) * p.cellMm, p.z[row * p.columns + column]!)
}

const trees = new WeakMap<Region, EdgeTree>()

/** Distance into a region, negative outside, mm. */
export function depthIn(region: Region, x: number, y: number): number {
  const tree = trees.get(region) ?? edgeTree(region.rings)
  trees.set(region, tree)
  return edgeDistance(tree, x, y) * (inside(region, x, y) ? 1 : -1)
}

/** Steepest way down into what stands under the middle of the cutter, degrees: what it has cut before is remembered. */
export function steepestInto(moves: readonly Move[]): number {
  const cut = new Map<string, number>()
  let last = { x: 0, y: 0, z: 9 }
  let most = 0
  for (const t of tipsOf(moves, 0.1)) {
    const key = `${Math.round(t.x / 0.3)} ${Math.round(t.y / 0.3)}`
    const was = cut.get(key) ?? 0
    if (t.z < was - 1e-6 && t.z < last.z)
      most = Math.max(most, Math.atan2(last.z - t.z, Math.hypot(t.x - last.x, t.y - last.y)))
    cut.set(key, Math.min(was, t.z))
    last = t
  }
  return (most * 180) / Math.PI
}

/**
 * Whether a disc of the radius that holds (x, y) lies in the region with `spareMm` to spare: asked of middles all
 * about the place.
 */
export function discHolds(region: Region, x: number, y: number, radiusMm: number, spareMm: number): boolean {
  const asked = [0, 0.25, 0.5, 0.75, 0.95]
  for (const share of asked)
    for (let k = 0; k < (share === 0 ? 1 : 24); k++) {
      const a = (2 * Math.PI * k) / 24
      const [cx, cy] = [x + share * radiusMm * Math.cos(a), y + share * radiusMm * Math.sin(a)]
      if (inside(region, cx, cy) && depthIn(region, cx, cy) >= radiusMm + spareMm) return true
    }
  return false
}

/** Length of all cutting moves, mm. */
export function cutLength(moves: readonly Move[]): number {
  let sum = 0
  let last: (Move & { x: number }) | null = null
  for (const m of moves) {
    if (m.kind === 'dwell') continue
    if (last !== null && m.kind === 'line') sum += Math.hypot(m.x - last.x, m.y - last.y, m.z - last.z)
    if (last !== null && m.kind === 'arc') {
      const [px, py, qx, qy] = [last.x - m.cx, last.y - m.cy, m.x - m.cx, m.y - m.cy]
      let a = Math.atan2(px * qy - py * qx, px * qx + py * qy)
      if (m.clockwise && a >= -1e-9) a -= 2 * Math.PI
      if (!m.clockwise && a <= 1e-9) a += 2 * Math.PI
      sum += Math.hypot(a * Math.hypot(px, py), m.z - last.z)
    }
    last = m
  }
  return sum
}
