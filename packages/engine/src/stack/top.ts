import type { Ring } from '../shape/region.ts'

/**
 * The top of a timber as a height over the plan, mm as cast: flat, crowned, or measured on a grid.
 *
 * - flat:     z = edge
 * - crowned:  z = edge + rise·(1 − (2u/width)²), u the distance from the ridge line, width the extent across it
 * - measured: z = edge + rise(x, y); between measured points two triangles a cell, split from its front left to
 *             its back right; beyond the grid the nearest measured edge goes on
 *
 * All volumes under a top are exact for the shape so defined: polygons are cut by half-planes and the
 * polynomial is integrated over what is left (Green's theorem). A polygon that is not convex may be left with
 * edges that run forth and back along the cut: they enclose nothing and change no integral.
 */
export type Top =
  | { readonly kind: 'flat'; readonly edge: number }
  | {
      readonly kind: 'crown'
      readonly edge: number
      readonly rise: number
      /** Middle of the ridge, unit vector across it, half the width. */
      readonly cx: number
      readonly cy: number
      readonly nx: number
      readonly ny: number
      readonly half: number
    }
  | {
      readonly kind: 'grid'
      readonly edge: number
      readonly x0: number
      readonly y0: number
      readonly dx: number
      readonly dy: number
      readonly columns: number
      readonly rows: number
      /** rises[row·columns + column], mm over `edge`. */
      readonly rises: Float64Array
    }

/** Height of the top at a point, mm as cast. */
export function topAt(top: Top, x: number, y: number): number {
  switch (top.kind) {
    case 'flat':
      return top.edge
    case 'crown': {
      const u = ((x - top.cx) * top.nx + (y - top.cy) * top.ny) / top.half
      return top.edge + top.rise * (1 - u * u)
    }
    case 'grid': {
      const fx = Math.min(top.columns - 1, Math.max(0, (x - top.x0) / top.dx))
      const fy = Math.min(top.rows - 1, Math.max(0, (y - top.y0) / top.dy))
      const i = Math.min(top.columns - 2, Math.floor(fx))
      const j = Math.min(top.rows - 2, Math.floor(fy))
      const [a, b, c] = plane(top, i, j, fx - i >= fy - j)
      return top.edge + a + b * (fx - i) + c * (fy - j)
    }
  }
}

/** Lowest and highest the top can be over the given rings, mm as cast. */
export function topRange(top: Top, rings: readonly Ring[]): { low: number; high: number } {
  if (top.kind === 'flat') return { low: top.edge, high: top.edge }
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const ring of rings) {
    for (let k = 0; k < ring.length; k += 2) {
      const z = topAt(top, ring[k]!, ring[k + 1]!)
      low = Math.min(low, z)
      high = Math.max(high, z)
    }
  }
  if (top.kind === 'crown') {
    // The ridge runs through the plan: its height bounds the top on that side.
    if (top.rise > 0) high = Math.max(high, top.edge + top.rise)
    else low = Math.min(low, top.edge + top.rise)
  } else {
    for (const rise of top.rises) {
      low = Math.min(low, top.edge + rise)
      high = Math.max(high, top.edge + rise)
    }
  }
  return { low, high }
}

/** Area of the rings (holes negative) where the top lies above `z`, mm². */
export function areaAbove(top: Top, rings: readonly Ring[], z: number): number {
  return over(top, rings, z, (ring, above) => (above ? areaOf(ring) : 0))
}

/** ∫ min(top, z) over the rings, mm³ over height 0: what lies under both the top and the level z. */
export function volumeUnder(top: Top, rings: readonly Ring[], z: number): number {
  return over(top, rings, z, (ring, above, height) => (above ? z * areaOf(ring) : height(ring)))
}

/** The pieces of the rings where the top lies above `z`; each keeps the turning sense of its ring. */
export function ringsAbove(top: Top, rings: readonly Ring[], z: number): Ring[] {
  const out: Ring[] = []
  over(top, rings, z, (ring, above) => {
    if (above && ring.length >= 6) out.push(ring)
    return 0
  })
  return out
}

type Take = (ring: Ring, above: boolean, height: (ring: Ring) => number) => number

// Cuts the rings into parts on which the top is one polynomial and lies wholly above or below z.
function over(top: Top, rings: readonly Ring[], z: number, take: Take): number {
  let sum = 0
  for (const ring of rings) {
    if (top.kind === 'flat') sum += take(ring, top.edge > z, r => top.edge * areaOf(r))
    else if (top.kind === 'crown') sum += overCrown(top, ring, z, take)
    else sum += overGrid(top, ring, z, take)
  }
  return sum
}

function overCrown(top: Extract<Top, { kind: 'crown' }>, ring: Ring, z: number, take: Take): number {
  const { cx, cy, nx, ny, half, rise, edge } = top
  const offset = -(cx * nx + cy * ny)
  const height = (r: Ring) =>
    (edge + rise) * areaOf(r) - (rise / (half * half)) * squaredMoment(r, nx, ny, offset)
  // top > z  ⇔  rise·(1 − (u/half)²) > z − edge
  const q = 1 - (z - edge) / (rise === 0 ? Number.MIN_VALUE : rise)
  if (rise === 0) return take(ring, edge > z, height)
  if (q <= 0) return take(ring, rise < 0, height)
  const u = half * Math.sqrt(q)
  const middle = clip(clip(ring, -nx, -ny, u - offset), nx, ny, u + offset)
  const right = clip(ring, nx, ny, offset - u)
  const left = clip(ring, -nx, -ny, -offset - u)
  return take(middle, rise > 0, height) + take(right, rise < 0, height) + take(left, rise < 0, height)
}

function overGrid(top: Extract<Top, { kind: 'grid' }>, ring: Ring, z: number, take: Take): number {
  const { x0, y0, dx, dy, columns, rows } = top
  let sum = 0
  let minX = Number.POSITIVE_INFINITY
  let maxX = Number.NEGATIVE_INFINITY
  for (let k = 0; k < ring.length; k += 2) {
    minX = Math.min(minX, ring[k]!)
    maxX = Math.max(maxX, ring[k]!)
  }
  for (let i = 0; i < columns - 1; i++) {
    const left = x0 + i * dx
    // The first and last strips reach out to whatever lies beyond the grid.
    if (maxX <= left && i > 0) break
    if (minX >= left + dx && i < columns - 2) continue
    let strip = i === 0 ? ring : clip(ring, 1, 0, -left)
    if (i < columns - 2) strip = clip(strip, -1, 0, left + dx)
    if (strip.length < 6) continue
    for (let j = 0; j < rows - 1; j++) {
      const low = y0 + j * dy
      let cell = j === 0 ? strip : clip(strip, 0, 1, -low)
      if (j < rows - 2) cell = clip(cell, 0, -1, low + dy)
      if (cell.length < 6) continue
      sum += overCell(top, cell, i, j, z, take)
    }
  }
  return sum
}

// A cell, and beyond the rim of the grid the band that continues it: there the height does not change outward.
function overCell(
  top: Extract<Top, { kind: 'grid' }>,
  cell: Ring,
  i: number,
  j: number,
  z: number,
  take: Take
): number {
  const { x0, y0, dx, dy, columns, rows } = top
  const left = x0 + i * dx
  const low = y0 + j * dy
  let sum = 0
  for (const across of [-1, 0, 1]) {
    if ((across < 0 && i > 0) || (across > 0 && i < columns - 2)) continue
    let part = cell
    if (across < 0) part = clip(part, -1, 0, left)
    else if (across > 0) part = clip(part, 1, 0, -(left + dx))
    else part = clip(clip(part, 1, 0, -left), -1, 0, left + dx)
    for (const along of [-1, 0, 1]) {
      if (part.length < 6 || (along < 0 && j > 0) || (along > 0 && j < rows - 2)) continue
      let bit = part
      if (along < 0) bit = clip(bit, 0, -1, low)
      else if (along > 0) bit = clip(bit, 0, 1, -(low + dy))
      else bit = clip(clip(bit, 0, 1, -low), 0, -1, low + dy)
      if (bit.length < 6) continue
      // fx, fy as topAt sees them: clamped beyond the rim.
      const fx: Affine = across === 0 ? [-left / dx, 1 / dx, 0] : [across < 0 ? 0 : 1, 0, 0]
      const fy: Affine = along === 0 ? [-low / dy, 0, 1 / dy] : [along < 0 ? 0 : 1, 0, 0]
      for (const lower of [true, false]) {
        const s = lower ? 1 : -1
        const triangle = clip(bit, s * (fx[1] - fy[1]), s * (fx[2] - fy[2]), s * (fx[0] - fy[0]))
        if (triangle.length < 6) continue
        // Where fx − fy is the same all over (a corner band), the whole bit goes to one side.
        if (fx[1] - fy[1] === 0 && fx[2] - fy[2] === 0 && lower !== fx[0] - fy[0] >= 0) continue
        const [a, b, c] = plane(top, i, j, lower)
        const h: Affine = [top.edge + a + b * fx[0] + c * fy[0], b * fx[1] + c * fy[1], b * fx[2] + c * fy[2]]
        const height = (r: Ring) => affineIntegral(r, h)
        if (h[1] === 0 && h[2] === 0) {
          sum += take(triangle, h[0] > z, height)
        } else {
          sum += take(clip(triangle, h[1], h[2], h[0] - z), true, height)
          sum += take(clip(triangle, -h[1], -h[2], z - h[0]), false, height)
        }
      }
    }
  }
  return sum
}

/** c0 + c1·x + c2·y. */
type Affine = readonly [number, number, number]

// Rise over a cell on one of its two triangles as a + b·fx + c·fy, fx and fy from 0 to 1.
function plane(top: Extract<Top, { kind: 'grid' }>, i: number, j: number, lower: boolean): Affine {
  const { rises, columns } = top
  const r00 = rises[j * columns + i]!
  const r10 = rises[j * columns + i + 1]!
  const r01 = rises[(j + 1) * columns + i]!
  const r11 = rises[(j + 1) * columns + i + 1]!
  return lower ? [r00, r10 - r00, r11 - r10] : [r00, r11 - r01, r01 - r00]
}

/** The part of a ring where a·x + b·y + c ≥ 0 (Sutherland & Hodgman 1974, Comm. ACM 17:32). */
export function clip(ring: Ring, a: number, b: number, c: number): Ring {
  const n = ring.length
  if (n < 6) return new Float64Array(0)
  const out = new Float64Array(2 * n)
  let size = 0
  let px = ring[n - 2]!
  let py = ring[n - 1]!
  let pd = a * px + b * py + c
  for (let k = 0; k < n; k += 2) {
    const x = ring[k]!
    const y = ring[k + 1]!
    const d = a * x + b * y + c
    if (d >= 0 !== pd >= 0) {
      const t = pd / (pd - d)
      out[size++] = px + t * (x - px)
      out[size++] = py + t * (y - py)
    }
    if (d >= 0) {
      out[size++] = x
      out[size++] = y
    }
    px = x
    py = y
    pd = d
  }
  return out.subarray(0, size)
}

function areaOf(ring: Ring): number {
  let twice = 0
  const n = ring.length
  for (let k = 0, p = n - 2; k < n; p = k, k += 2) twice += ring[p]! * ring[k + 1]! - ring[k]! * ring[p + 1]!
  return twice / 2
}

// ∫ (c0 + c1 x + c2 y) dA: area times the value at the centroid, summed over the triangles of a fan.
function affineIntegral(ring: Ring, [c0, c1, c2]: Affine): number {
  const n = ring.length
  if (n < 6) return 0
  const x0 = ring[0]!
  const y0 = ring[1]!
  let sum = 0
  for (let k = 2; k + 3 < n; k += 2) {
    const x1 = ring[k]!
    const y1 = ring[k + 1]!
    const x2 = ring[k + 2]!
    const y2 = ring[k + 3]!
    const area = ((x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0)) / 2
    sum += area * (c0 + (c1 * (x0 + x1 + x2)) / 3 + (c2 * (y0 + y1 + y2)) / 3)
  }
  return sum
}

// ∫ (nx·x + ny·y + offset)² dA over a fan: on a triangle the mean of u² is (Σ u_i² + Σ_{i<j} u_i u_j)/6.
function squaredMoment(ring: Ring, nx: number, ny: number, offset: number): number {
  const n = ring.length
  if (n < 6) return 0
  const u0 = nx * ring[0]! + ny * ring[1]! + offset
  let sum = 0
  for (let k = 2; k + 3 < n; k += 2) {
    const u1 = nx * ring[k]! + ny * ring[k + 1]! + offset
    const u2 = nx * ring[k + 2]! + ny * ring[k + 3]! + offset
    const area =
      ((ring[k]! - ring[0]!) * (ring[k + 3]! - ring[1]!) -
        (ring[k + 2]! - ring[0]!) * (ring[k + 1]! - ring[1]!)) /
      2
    sum += (area * (u0 * u0 + u1 * u1 + u2 * u2 + u0 * u1 + u0 * u2 + u1 * u2)) / 6
  }
  return sum
}
