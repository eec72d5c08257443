import { intersection } from '../shape/combine.ts'
import { bounds, ringArea } from '../shape/measure.ts'
import type { Bounds, Ring } from '../shape/region.ts'
import { clip } from './clip-ring.ts'
import type { GridTop } from './measured-top.ts'
import { gridAbove, gridAt, gridParts, gridRange } from './measured-top.ts'
import type { TopPart } from './top-part.ts'
import { areaAboveOf, volumeUnderOf } from './top-part.ts'

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

/** The rings (holes negative) parted so that the top is one polynomial over each part. */
export function partsOf(top: Top, rings: readonly Ring[]): TopPart[] {
  const out: TopPart[] = []
  for (const ring of rings) {
    if (top.kind === 'flat') out.push(levelPart(ring, top.edge))
    else if (top.kind === 'crown') crownParts(top, ring, out)
    else gridParts(top, ring, out)
  }
  return out
}

/** Area of the rings (holes negative) where the top lies above `z`, mm². */
export function areaAbove(top: Top, rings: readonly Ring[], z: number): number {
  return areaAboveOf(partsOf(top, rings), z)
}

/** ∫ min(top, z) over the rings, mm³ over height 0: what lies under both the top and the level z. */
export function volumeUnder(top: Top, rings: readonly Ring[], z: number): number {
  return volumeUnderOf(partsOf(top, rings), z)
}

/** What the rings enclose where the top lies above `z`, as the rings of a region. */
export function ringsAbove(top: Top, rings: readonly Ring[], z: number): readonly Ring[] {
  if (top.kind === 'flat') return top.edge > z ? rings : []
  const box = bounds({ rings })
  const above = top.kind === 'crown' ? crownAbove(top, z, box) : gridAbove(top, z, box)
  return above.length === 0 ? [] : intersection({ rings }, { rings: above }).rings
}

function levelPart(ring: Ring, z: number): TopPart {
  const areaMm2 = ringArea(ring)
  return {
    ring,
    low: z,
    high: z,
    areaMm2,
    volumeMm3: z * areaMm2,
    above: () => ring,
    integral: r => z * ringArea(r)
  }
}

/** Points of a ring to one strip of a crown: few strips where clipping is cheap. */
const POINTS_A_STRIP = 200
const MOST_STRIPS = 32

// Strips along the ridge on either side of it, and level parts beside the crown.
function crownParts(top: CrownTop, whole: Ring, out: TopPart[]): void {
  const { cx, cy, nx, ny, half, rise, edge } = top
  if (rise === 0) {
    out.push(levelPart(whole, edge))
    return
  }
  const strips = Math.min(MOST_STRIPS, Math.max(1, Math.ceil(whole.length / 2 / POINTS_A_STRIP)))
  for (const side of [1, -1]) {
    // u runs outward from the ridge on this side: u = a·x + b·y + c.
    const [a, b, c] = [side * nx, side * ny, -side * (cx * nx + cy * ny)]
    let rest = clip(whole, a, b, c)
    for (let k = 0; k < strips && rest.length >= 6; k++) {
      const [u0, u1] = [(half * k) / strips, (half * (k + 1)) / strips]
      const ring = clip(rest, -a, -b, u1 - c)
      rest = clip(rest, a, b, c - u1)
      if (ring.length >= 6) out.push(crownPart(top, ring, a, b, c, u0, u1))
    }
    if (rest.length >= 6) out.push(levelPart(rest, edge))
  }
}

function crownPart(
  top: CrownTop,
  ring: Ring,
  a: number,
  b: number,
  c: number,
  u0: number,
  u1: number
): TopPart {
  const { edge, rise, half } = top
  const integral = (r: Ring) =>
    (edge + rise) * ringArea(r) - (rise / (half * half)) * squaredMoment(r, a, b, c)
  const [p, q] = [edge + rise * (1 - (u0 / half) ** 2), edge + rise * (1 - (u1 / half) ** 2)]
  return {
    ring,
    low: Math.min(p, q),
    high: Math.max(p, q),
    areaMm2: ringArea(ring),
    volumeMm3: integral(ring),
    above: z => {
      // top > z  ⇔  rise·(1 − (u/half)²) > z − edge
      const u = half * Math.sqrt(Math.max(0, 1 - (z - edge) / rise))
      return rise > 0 ? clip(ring, -a, -b, u - c) : clip(ring, a, b, c - u)
    },
    integral
  }
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
  const u = half * Math.sqrt(Math.max(0, 1 - (z - edge) / rise))
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
