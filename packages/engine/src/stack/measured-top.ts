import { ringArea } from '../shape/measure.ts'
import type { Bounds, Ring } from '../shape/region.ts'
import { clip } from './clip-ring.ts'
import type { TopPart } from './top-part.ts'

/**
 * A top measured on a grid: heights at the points, two triangles a cell between them (split from front left to
 * back right), and beyond the grid the nearest measured edge.
 *
 * Inside a cell fx and fy run from 0 to 1; the height is edge + a + b·fx + c·fy on each triangle.
 */
export interface GridTop {
  readonly kind: 'grid'
  readonly edge: number
  readonly x0: number
  readonly y0: number
  readonly dx: number
  readonly dy: number
  readonly columns: number
  readonly rows: number
  /** rises[row·columns + column], mm over `edge`; rows run from the front. */
  readonly rises: Float64Array
}

/** c0 + c1·x + c2·y. */
type Affine = readonly [number, number, number]

/** Height at a point, mm as cast. */
export function gridAt(top: GridTop, x: number, y: number): number {
  const fx = Math.min(top.columns - 1, Math.max(0, (x - top.x0) / top.dx))
  const fy = Math.min(top.rows - 1, Math.max(0, (y - top.y0) / top.dy))
  const i = Math.min(top.columns - 2, Math.floor(fx))
  const j = Math.min(top.rows - 2, Math.floor(fy))
  const [a, b, c] = plane(top, i, j, fx - i >= fy - j)
  return top.edge + a + b * (fx - i) + c * (fy - j)
}

/**
 * Lowest and highest over the rings, mm as cast. The height is linear on every triangle, so its extremes lie
 * at points of the rings, where the rings cross the lines of the grid, and at measured points inside.
 */
export function gridRange(top: GridTop, rings: readonly Ring[]): { low: number; high: number } {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  const see = (z: number) => {
    if (z < low) low = z
    if (z > high) high = z
  }
  const { x0, y0, dx, dy, columns, rows } = top
  // Where the rings cross each row of measured points.
  const crossings: number[][] = Array.from({ length: rows }, () => [])
  for (const ring of rings) {
    for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2) {
      const [px, py, qx, qy] = [ring[p]!, ring[p + 1]!, ring[k]!, ring[k + 1]!]
      see(gridAt(top, qx, qy))
      const [fp, fq] = [(px - x0) / dx, (qx - x0) / dx]
      const [gp, gq] = [(py - y0) / dy, (qy - y0) / dy]
      const at = (t: number) => see(gridAt(top, px + t * (qx - px), py + t * (qy - py)))
      between(fp, fq, columns - 1, at)
      between(gp, gq, rows - 1, at)
      // The diagonals: fx − fy whole.
      between(fp - gp, fq - gq, Math.max(columns, rows) - 1, at, -(rows - 1))
      for (let j = Math.max(0, Math.ceil(Math.min(gp, gq))); j < rows && j <= Math.max(gp, gq); j++) {
        // Half-open, so that a point of the ring on a row counts once.
        if (gp <= j !== gq <= j) crossings[j]!.push(px + ((j - gp) / (gq - gp)) * (qx - px))
      }
    }
  }
  crossings.forEach((xs, j) => {
    xs.sort((a, b) => a - b)
    for (let k = 0; k + 1 < xs.length; k += 2) {
      const first = Math.max(0, Math.ceil((xs[k]! - x0) / dx))
      const last = Math.min(columns - 1, Math.floor((xs[k + 1]! - x0) / dx))
      for (let i = first; i <= last; i++) see(top.edge + top.rises[j * columns + i]!)
    }
  })
  return { low, high }
}

// Calls `at` with the shares t of the way from p to q at which whole numbers from `least` to `most` are passed.
function between(p: number, q: number, most: number, at: (t: number) => void, least = 0): void {
  const first = Math.max(least, Math.ceil(Math.min(p, q)))
  const last = Math.min(most, Math.floor(Math.max(p, q)))
  for (let k = first; k <= last; k++) if (q !== p) at((k - p) / (q - p))
}

/** Parts the ring at the lines of the grid and its diagonals; on each part the height is linear. */
export function gridParts(top: GridTop, ring: Ring, out: TopPart[]): void {
  const { x0, y0, dx, dy, columns, rows } = top
  // Strips from left to right, in each cells from front to back; the outermost ones lie beyond the grid.
  let rest = ring
  for (let column = 0; column <= columns && rest.length >= 6; column++) {
    const right = x0 + column * dx
    const strip = column === columns ? rest : clip(rest, -1, 0, right)
    if (column < columns) rest = clip(rest, 1, 0, -right)
    let left = strip
    for (let row = 0; row <= rows && left.length >= 6; row++) {
      const back = y0 + row * dy
      const cell = row === rows ? left : clip(left, 0, -1, back)
      if (row < rows) left = clip(left, 0, 1, -back)
      if (cell.length >= 6) cellParts(top, cell, column, row, out)
    }
  }
}

function cellParts(top: GridTop, cell: Ring, column: number, row: number, out: TopPart[]): void {
  const { x0, y0, dx, dy, columns, rows } = top
  const i = Math.min(columns - 2, Math.max(0, column - 1))
  const j = Math.min(rows - 2, Math.max(0, row - 1))
  const acrossBeyond = column === 0 || column === columns
  const alongBeyond = row === 0 || row === rows
  // fx and fy as gridAt sees them: held beyond the rim.
  const fx: Affine = acrossBeyond ? [column === 0 ? 0 : 1, 0, 0] : [-(x0 + i * dx) / dx, 1 / dx, 0]
  const fy: Affine = alongBeyond ? [row === 0 ? 0 : 1, 0, 0] : [-(y0 + j * dy) / dy, 0, 1 / dy]
  const put = (ring: Ring, lower: boolean) => {
    if (ring.length < 6) return
    const [a, b, c] = plane(top, i, j, lower)
    const h: Affine = [top.edge + a + b * fx[0] + c * fy[0], b * fx[1] + c * fy[1], b * fx[2] + c * fy[2]]
    out.push(planePart(ring, h))
  }
  if (acrossBeyond || alongBeyond) {
    // One plane: the triangle that has the edge which goes on.
    put(cell, column === columns || row === 0)
    return
  }
  for (const lower of [true, false]) {
    const s = lower ? 1 : -1
    put(clip(cell, s * (fx[1] - fy[1]), s * (fx[2] - fy[2]), s * (fx[0] - fy[0])), lower)
  }
}

function planePart(ring: Ring, h: Affine): TopPart {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let k = 0; k < ring.length; k += 2) {
    const z = h[0] + h[1] * ring[k]! + h[2] * ring[k + 1]!
    if (z < low) low = z
    if (z > high) high = z
  }
  return {
    ring,
    low,
    high,
    areaMm2: ringArea(ring),
    volumeMm3: affineIntegral(ring, h),
    above: z => clip(ring, h[1], h[2], h[0] - z),
    integral: r => affineIntegral(r, h)
  }
}

// Rise over a cell on one of its two triangles as a + b·fx + c·fy.
function plane(top: GridTop, i: number, j: number, lower: boolean): Affine {
  const { rises, columns } = top
  const r00 = rises[j * columns + i]!
  const r10 = rises[j * columns + i + 1]!
  const r01 = rises[(j + 1) * columns + i]!
  const r11 = rises[(j + 1) * columns + i + 1]!
  return lower ? [r00, r10 - r00, r11 - r10] : [r00, r11 - r01, r01 - r00]
}

// ∫ (c0 + c1 x + c2 y) dA: area times the value at the centroid, summed over the triangles of a fan.
function affineIntegral(ring: Ring, [c0, c1, c2]: Affine): number {
  const n = ring.length
  if (n < 6) return 0
  const x0 = ring[0]!
  const y0 = ring[1]!
  // About the first point, so that a small ring far from the origin keeps its digits.
  const at0 = c0 + c1 * x0 + c2 * y0
  let sum = 0
  for (let k = 2; k + 3 < n; k += 2) {
    const x1 = ring[k]! - x0
    const y1 = ring[k + 1]! - y0
    const x2 = ring[k + 2]! - x0
    const y2 = ring[k + 3]! - y0
    sum += ((x1 * y2 - x2 * y1) / 2) * (at0 + (c1 * (x1 + x2)) / 3 + (c2 * (y1 + y2)) / 3)
  }
  return sum
}

/**
 * Where the top lies above z, as rings side by side that together reach beyond the box: whole rows of cells at
 * once, and of the cells the level z passes through, what lies above. Rings that adjoin share their points.
 */
export function gridAbove(top: GridTop, z: number, box: Bounds): Ring[] {
  const { columns, rows, edge, rises } = top
  // Measured points and one row of points more on each side, which repeat the rim.
  const xs = axis(top.x0, top.dx, columns, box.minX, box.maxX)
  const ys = axis(top.y0, top.dy, rows, box.minY, box.maxY)
  const height = (i: number, j: number) => {
    const a = Math.min(columns - 1, Math.max(0, i - 1))
    const b = Math.min(rows - 1, Math.max(0, j - 1))
    return edge + rises[b * columns + a]! - z
  }
  const out: Ring[] = []
  for (let j = 0; j <= rows; j++) {
    if (ys[j + 1]! < box.minY || ys[j]! > box.maxY) continue
    let start = -1
    const flush = (end: number) => {
      if (start >= 0)
        out.push(
          Float64Array.of(xs[start]!, ys[j]!, xs[end]!, ys[j]!, xs[end]!, ys[j + 1]!, xs[start]!, ys[j + 1]!)
        )
      start = -1
    }
    for (let i = 0; i <= columns; i++) {
      if (xs[i + 1]! < box.minX || xs[i]! > box.maxX) {
        flush(i)
        continue
      }
      const h = [height(i, j), height(i + 1, j), height(i + 1, j + 1), height(i, j + 1)]
      const above = h.filter(v => v > 0).length
      if (above === 4) {
        if (start < 0) start = i
        continue
      }
      flush(i)
      if (above === 0) continue
      const [a, b, c, d] = [
        [xs[i]!, ys[j]!, h[0]!],
        [xs[i + 1]!, ys[j]!, h[1]!],
        [xs[i + 1]!, ys[j + 1]!, h[2]!],
        [xs[i]!, ys[j + 1]!, h[3]!]
      ] as [Node, Node, Node, Node]
      for (const triangle of [
        [a, b, c],
        [a, c, d]
      ] as const) {
        const ring = aboveZero(triangle)
        if (ring.length >= 6) out.push(ring)
      }
    }
    flush(columns + 1)
  }
  return out
}

/** x, y and the height over the level. */
type Node = readonly [number, number, number]

function aboveZero(nodes: readonly Node[]): Ring {
  const out: number[] = []
  nodes.forEach((p, k) => {
    const q = nodes[(k + 1) % nodes.length]!
    if (p[2] > 0) out.push(p[0], p[1])
    if (p[2] > 0 === q[2] > 0) return
    // From the higher to the lower node, whichever cell asks: cells that adjoin get the same point.
    const [u, v] = p[2] > 0 ? [p, q] : [q, p]
    const t = u[2] / (u[2] - v[2])
    out.push(u[0] + t * (v[0] - u[0]), u[1] + t * (v[1] - u[1]))
  })
  return Float64Array.from(out)
}

function axis(from: number, step: number, count: number, min: number, max: number): number[] {
  const places = Array.from({ length: count }, (_, k) => from + k * step)
  return [Math.min(from, min) - 1, ...places, Math.max(places[count - 1]!, max) + 1]
}
