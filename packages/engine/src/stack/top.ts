import { intersection } from '../shape/combine.ts'
import { bounds, ringArea } from '../shape/measure.ts'
import type { Bounds, Ring } from '../shape/region.ts'
import { clip } from './clip-ring.ts'
import type { GridTop, Take } from './measured-top.ts'
import { gridAbove, gridAt, gridRange, overGrid } from './measured-top.ts'

/**
 * The top of a timber as a height over the plan, mm as cast: flat, crowned, or measured on a grid.
 *
 * - flat:     z = edge
 * - crowned:  z = edge + rise·(1 − (2u/width)²), u the distance from the ridge line, width the extent across it;
 *             beyond that extent (the foot of a flared side) z = edge
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
  | GridTop

type CrownTop = Extract<Top, { kind: 'crown' }>

/** Height of the top at a point, mm as cast. */
export function topAt(top: Top, x: number, y: number): number {
  switch (top.kind) {
    case 'flat':
      return top.edge
    case 'crown': {
      const u = ((x - top.cx) * top.nx + (y - top.cy) * top.ny) / top.half
      return top.edge + top.rise * Math.max(0, 1 - u * u)
    }
    case 'grid':
      return gridAt(top, x, y)
  }
}

/** Lowest and highest the top is over the given rings (outlines and holes), mm as cast. */
export function topRange(top: Top, rings: readonly Ring[]): { low: number; high: number } {
  switch (top.kind) {
    case 'flat':
      return { low: top.edge, high: top.edge }
    case 'crown':
      return crownRange(top, rings)
    case 'grid':
      return gridRange(top, rings)
  }
}

/** The lowest the top can be anywhere, mm as cast: below it the side alone bounds a level cut. */
export function topFloor(top: Top): number {
  switch (top.kind) {
    case 'flat':
      return top.edge
    case 'crown':
      return top.edge + Math.min(0, top.rise)
    case 'grid':
      return top.edge + top.rises.reduce((least, rise) => Math.min(least, rise), Number.POSITIVE_INFINITY)
  }
}

/** Area of the rings (holes negative) where the top lies above `z`, mm². */
export function areaAbove(top: Top, rings: readonly Ring[], z: number): number {
  return over(top, rings, z, (ring, above) => (above ? ringArea(ring) : 0))
}

/** ∫ min(top, z) over the rings, mm³ over height 0: what lies under both the top and the level z. */
export function volumeUnder(top: Top, rings: readonly Ring[], z: number): number {
  return over(top, rings, z, (ring, above, height) => (above ? z * ringArea(ring) : height(ring)))
}

/** What the rings enclose where the top lies above `z`, as the rings of a region. */
export function ringsAbove(top: Top, rings: readonly Ring[], z: number): readonly Ring[] {
  if (top.kind === 'flat') return top.edge > z ? rings : []
  const box = bounds({ rings })
  const above = top.kind === 'crown' ? crownAbove(top, z, box) : gridAbove(top, z, box)
  return above.length === 0 ? [] : intersection({ rings }, { rings: above }).rings
}

// Cuts the rings into parts on which the top is one polynomial and lies wholly above or below z.
function over(top: Top, rings: readonly Ring[], z: number, take: Take): number {
  let sum = 0
  for (const ring of rings) {
    if (top.kind === 'flat') sum += take(ring, top.edge > z, r => top.edge * ringArea(r))
    else if (top.kind === 'crown') sum += overCrown(top, ring, z, take)
    else sum += overGrid(top, ring, z, take)
  }
  return sum
}

function overCrown(top: CrownTop, whole: Ring, z: number, take: Take): number {
  const { cx, cy, nx, ny, half, rise, edge } = top
  const offset = -(cx * nx + cy * ny)
  const plain = (r: Ring) => edge * ringArea(r)
  if (rise === 0) return take(whole, edge > z, plain)
  // The band under the crown, and what reaches out of it.
  const ring = clip(clip(whole, -nx, -ny, half - offset), nx, ny, half + offset)
  const beside =
    take(clip(whole, nx, ny, offset - half), edge > z, plain) +
    take(clip(whole, -nx, -ny, -offset - half), edge > z, plain)
  const height = (r: Ring) =>
    (edge + rise) * ringArea(r) - (rise / (half * half)) * squaredMoment(r, nx, ny, offset)
  // top > z  ⇔  rise·(1 − (u/half)²) > z − edge
  const q = 1 - (z - edge) / rise
  if (q <= 0) return beside + take(ring, rise < 0, height)
  const u = half * Math.sqrt(q)
  const middle = clip(clip(ring, -nx, -ny, u - offset), nx, ny, u + offset)
  const right = clip(ring, nx, ny, offset - u)
  const left = clip(ring, -nx, -ny, -offset - u)
  return (
    beside + take(middle, rise > 0, height) + take(right, rise < 0, height) + take(left, rise < 0, height)
  )
}

function crownRange(top: CrownTop, rings: readonly Ring[]): { low: number; high: number } {
  let nearest = Number.POSITIVE_INFINITY
  let farthest = 0
  for (const ring of rings) {
    let low = Number.POSITIVE_INFINITY
    let high = Number.NEGATIVE_INFINITY
    for (let k = 0; k < ring.length; k += 2) {
      const u = (ring[k]! - top.cx) * top.nx + (ring[k + 1]! - top.cy) * top.ny
      low = Math.min(low, u)
      high = Math.max(high, u)
    }
    // A ring with points on both sides of the ridge crosses it.
    nearest = Math.min(nearest, low <= 0 && high >= 0 ? 0 : Math.min(Math.abs(low), Math.abs(high)))
    farthest = Math.max(farthest, Math.abs(low), Math.abs(high))
  }
  const height = (u: number) => top.edge + top.rise * Math.max(0, 1 - (u / top.half) ** 2)
  const [a, b] = [height(nearest), height(farthest)]
  return { low: Math.min(a, b), high: Math.max(a, b) }
}

// Where the crown lies above z, as strips that reach beyond the box.
function crownAbove(top: CrownTop, z: number, box: Bounds): Ring[] {
  const { cx, cy, nx, ny, half, rise, edge } = top
  const far =
    Math.hypot(box.maxX - box.minX, box.maxY - box.minY) +
    Math.hypot((box.minX + box.maxX) / 2 - cx, (box.minY + box.maxY) / 2 - cy) +
    half
  // From u0 to u1 across the ridge, along it as far as need be; counter-clockwise.
  const strip = (u0: number, u1: number): Ring => {
    const [lx, ly] = [-ny * far, nx * far]
    return Float64Array.of(
      cx + u0 * nx - lx,
      cy + u0 * ny - ly,
      cx + u1 * nx - lx,
      cy + u1 * ny - ly,
      cx + u1 * nx + lx,
      cy + u1 * ny + ly,
      cx + u0 * nx + lx,
      cy + u0 * ny + ly
    )
  }
  if (rise <= 0 ? z < edge + rise : z < edge) return [strip(-far, far)]
  if (rise <= 0 ? z >= edge : z >= edge + rise) return []
  const u = half * Math.sqrt(1 - (z - edge) / rise)
  return rise > 0 ? [strip(-u, u)] : [strip(-far, -u), strip(u, far)]
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
