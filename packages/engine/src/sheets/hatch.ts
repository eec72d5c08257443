import { clipLines, thinned } from './clip-line.ts'
import type { Hatch } from './mark.ts'
import { seeded } from './seeded.ts'

/**
 * Hatching by material, so that a section reads in print and without colour. ISO 128-3 (memory) asks for narrow
 * lines, one direction and spacing for all areas of a part, neighbours that differ, at least 0.7 mm apart;
 * it fixes no sign for timber or resin, so the sheet carries a key:
 *
 * - along    timber cut along its grain: long wavering lines in the direction of the grain
 * - across   timber cut across its grain: short slanted strokes, staggered
 * - crossed  opaque resin: lines both ways at 45°
 * - paired   resin tinted but clear: pairs of lines at 45°
 * - wide     clear resin: lines far apart at 45°
 * - dots     void: nothing but fine dots
 * - solid    dark fill, no lines (thin parts are drawn black)
 *
 * Lines are placed from the sheet's own origin, so that areas of one part run on in each other.
 */
export function hatchLines(rings: readonly Float64Array[], hatch: Hatch): Float64Array[] {
  const seed = hatch.seed ?? 0
  switch (hatch.kind) {
    case 'along':
      return along(rings, hatch.angleDeg ?? 0, seed)
    case 'across':
      return across(rings, seed)
    case 'crossed':
      return [...straight(rings, 45, CROSSED_MM), ...straight(rings, -45, CROSSED_MM)]
    case 'paired':
      return [...straight(rings, 45, WIDE_MM), ...straight(rings, 45, WIDE_MM, PAIR_MM)]
    case 'wide':
      return straight(rings, seed % 2 === 0 ? 45 : -45, WIDE_MM)
    case 'dots':
      return dots(rings)
    case 'solid':
      return []
  }
}

/** Distances between hatch lines, mm on the sheet: over 0.7 mm each (ISO 128-3; memory). */
export const CROSSED_MM = 1.5
export const WIDE_MM = 2.75
const PAIR_MM = 0.75
const GRAIN_MM = 1.05
const DOT_MM = 1.25
/** Strokes of end grain: distance across, length and slant. */
const STROKE_MM = 1.5
const STROKE_LONG_MM = 3.4
const STROKE_DEG = 62

interface Turned {
  readonly minU: number
  readonly maxU: number
  readonly minV: number
  readonly maxV: number
  /** From along/across back to the sheet. */
  readonly put: (u: number, v: number) => readonly [number, number]
}

function turnedBox(rings: readonly Float64Array[], angleDeg: number): Turned {
  const a = (angleDeg * Math.PI) / 180
  const [c, s] = [Math.cos(a), Math.sin(a)]
  let [minU, maxU, minV, maxV] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const ring of rings) {
    for (let k = 0; k < ring.length; k += 2) {
      const u = ring[k]! * c + ring[k + 1]! * s
      const v = ring[k + 1]! * c - ring[k]! * s
      minU = Math.min(minU, u)
      maxU = Math.max(maxU, u)
      minV = Math.min(minV, v)
      maxV = Math.max(maxV, v)
    }
  }
  return { minU, maxU, minV, maxV, put: (u, v) => [u * c - v * s, u * s + v * c] }
}

function straight(
  rings: readonly Float64Array[],
  angleDeg: number,
  spacing: number,
  shift = 0
): Float64Array[] {
  const { minU, maxU, minV, maxV, put } = turnedBox(rings, angleDeg)
  const lines: Float64Array[] = []
  for (let k = Math.ceil((minV - shift) / spacing); k * spacing + shift < maxV; k++) {
    const v = k * spacing + shift
    lines.push(Float64Array.of(...put(minU - 1, v), ...put(maxU + 1, v)))
  }
  return clipLines(rings, lines)
}

function along(rings: readonly Float64Array[], angleDeg: number, seed: number): Float64Array[] {
  const { minU, maxU, minV, maxV, put } = turnedBox(rings, angleDeg)
  const phase = seeded(seed + 11)() * 6
  const lines: Float64Array[] = []
  for (let k = Math.floor(minV / GRAIN_MM) - 1; k * GRAIN_MM < maxV + 1; k++) {
    // By its place, not by its turn: areas of one timber beside each other share their lines.
    const lift = (seeded(97 * seed + k)() - 0.5) * 0.35
    const points: number[] = []
    for (let u = 1.5 * Math.floor((minU - 1) / 1.5); u <= maxU + 1.5; u += 1.5) {
      // Neighbours waver together: one slow wave, a little of their own.
      const v = k * GRAIN_MM + lift + 0.22 * Math.sin(u / 5.3 + phase) + 0.1 * Math.sin(u / 2.1 + k)
      points.push(...put(u, v))
    }
    lines.push(thinned(Float64Array.from(points), 0.015))
  }
  return clipLines(rings, lines)
}

function across(rings: readonly Float64Array[], seed: number): Float64Array[] {
  const lean = seed % 2 === 0 ? STROKE_DEG : 180 - STROKE_DEG
  const { minU, maxU, minV, maxV, put } = turnedBox(rings, lean)
  const period = STROKE_LONG_MM + 1.1
  const lines: Float64Array[] = []
  for (let k = Math.floor(minV / STROKE_MM); k * STROKE_MM < maxV + STROKE_MM; k++) {
    const row = seeded(89 * seed + k)
    const shift = row() * period
    const [share, lift] = [0.65 + 0.4 * row(), (row() - 0.5) * 0.3]
    for (let n = Math.floor((minU - shift) / period); n * period + shift < maxU; n++) {
      const u = n * period + shift
      const v = k * STROKE_MM + lift
      lines.push(Float64Array.of(...put(u, v), ...put(u + STROKE_LONG_MM * share, v + 0.12)))
    }
  }
  return clipLines(rings, lines)
}

function dots(rings: readonly Float64Array[]): Float64Array[] {
  const { minU, maxU, minV, maxV } = turnedBox(rings, 0)
  const rows: Float64Array[] = []
  for (let j = Math.ceil(minV / DOT_MM); j * DOT_MM < maxV; j++)
    rows.push(Float64Array.of(minU - 1, j * DOT_MM, maxU + 1, j * DOT_MM))
  const out: Float64Array[] = []
  for (const row of clipLines(rings, rows)) {
    const y = row[1]!
    const from = row[0]!
    const to = row[row.length - 2]!
    for (let i = Math.ceil(from / DOT_MM + 0.25); i * DOT_MM < to - 0.25 * DOT_MM; i++)
      out.push(Float64Array.of(i * DOT_MM, y))
  }
  return out
}
