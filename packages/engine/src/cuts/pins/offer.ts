import type { Shop } from '../../piece/shop-schema.ts'
import { bounds, inside, nearest } from '../../shape/measure.ts'
import type { Bounds, Region } from '../../shape/region.ts'
import { coreAt } from '../../stack/core.ts'
import { strokeAll } from '../../stack/groove-region.ts'
import type { Stack } from '../../stack/stack.ts'
import { castingOf } from '../../stack/waste.ts'
import { settingsOf } from '../../steps/setting.ts'

/**
 * Where the casting really offers a pin hole: solid through and through on the day it is drilled, outside the
 * outline, clear of all that is cut, of stones and of what is to be kept clear, with enough material round it.
 *
 *   from the middle of the hole to the edge of the casting      1.5·D at least
 *   from its edge to whatever is cut, and to stones             3 mm at least
 *   from its edge to the outline where no cut frees the part    3 mm and a saw of 3 mm
 *
 * Source: edge distance of 1.5 diameters: practice; 3 mm beside a cutter's path: practice.
 *
 * Limits: stones of a zone are taken to lie anywhere in it, at any height.
 */

/** From the middle of a hole to the edge of the casting, in diameters (practice). */
export const EDGE_DIAMETERS = 1.5
/** Between a hole and a cutter's path, a stone or a place to keep clear, mm (practice). */
export const CLEAR_MM = 3
/** Width of a saw that frees the part where no cut does, mm (practice). */
const SAW_MM = 3
/** Share of the height of the casting that is to stand where a pin goes: resin lies lower than timber (practice). */
const LEAST_SHARE = 0.75
/** Heights that differ by less are the same, mm. */
const SAME_MM = 1e-6
/** Places round a hole at which its material is looked at. */
const ROUND = 8

/** Why a place is no place for a pin, and how much is missing, mm. */
export interface HoleFault {
  readonly kind: 'misses' | 'wall' | 'hollow' | 'inside' | 'path' | 'stone' | 'keep clear'
  /** What there is and what is wanted, mm: for `misses` and `inside` how far it lies out or in, and 0. */
  readonly mm: number
  readonly wantedMm: number
  /** What it comes near to: the name of a cut, a pour; '' where it is plain. */
  readonly what: string
}

/** Something a hole keeps off, with its box. */
interface Off {
  /** Drawn when a place comes near its box: most never do. */
  readonly region: () => Region
  readonly box: Bounds
  readonly kind: 'path' | 'stone' | 'keep clear'
  readonly what: string
  readonly clearMm: number
}

/** What offers are judged by: found once for a piece. */
export interface Ground {
  readonly stack: Stack
  readonly casting: Region
  readonly outline: Region
  readonly off: readonly Off[]
  /** Whether a cut frees the part: else the outline is sawn. */
  readonly freed: boolean
  /** Step on which the pins are drilled, by index; −1 before any. */
  readonly day: number
  /** How far the machine travels, mm; Infinity without one. */
  readonly travelMm: number
}

/** The ground of a piece. */
export function groundOf(stack: Stack, shop: Pick<Shop, 'machine'>): Ground {
  const { piece, geometry, entries } = stack
  const off: Off[] = []
  const add = (region: Region, kind: Off['kind'], what: string, clearMm = CLEAR_MM) => {
    if (region.rings.length > 0) off.push({ region: () => region, box: bounds(region), kind, what, clearMm })
  }
  const addLines = (lines: readonly Float64Array[], widthMm: number, what: string) => {
    if (lines.length === 0) return
    const { minX, minY, maxX, maxY } = bounds({ rings: lines })
    const half = widthMm / 2
    const box = { minX: minX - half, minY: minY - half, maxX: maxX + half, maxY: maxY + half }
    let drawn: Region | null = null
    const region = () => {
      drawn ??= strokeAll(lines, widthMm, 0.1)
      return drawn
    }
    off.push({ region, box, kind: 'path', what, clearMm: CLEAR_MM })
  }
  piece.cuts.forEach((cut, i) => {
    const region = geometry.cutRegions[i] ?? null
    const { id } = entries.cuts[i]!
    if (region !== null) add(region, 'path', id)
    else addLines(geometry.cutLines[i] ?? [], cut.width ?? 1, id)
  })
  piece.markings.forEach((m, i) => {
    addLines(geometry.markingLines[i]!, m.width, entries.markings[i]!.id)
  })
  piece.pours.forEach((pour, i) => {
    for (const [j, s] of pour.stones.entries()) {
      const { id } = entries.pours[i]!
      const zone = geometry.zones[i]![j]!
      if (zone !== null) add(zone, 'stone', id)
      for (const p of s.placed ?? []) {
        const half = Math.max(p.size[0], p.size[1]) / 2
        const ring = Float64Array.of(
          p.at[0] - 0.01,
          p.at[1],
          p.at[0],
          p.at[1] - 0.01,
          p.at[0] + 0.01,
          p.at[1]
        )
        add({ rings: [ring] }, 'stone', id, CLEAR_MM + half)
      }
      if (s.all) add(geometry.pourRegions[i] ?? geometry.mould, 'stone', id)
    }
  })
  for (const region of geometry.keepClear) add(region, 'keep clear', '')
  const drilled = stack.steps.findIndex(s => s.kind === 'drill pins')
  const { machine } = shop
  return {
    stack,
    casting: castingOf(piece, geometry),
    outline: geometry.outline,
    off,
    freed: piece.cuts.some(c => c.kind === 'outline'),
    day: drilled >= 0 ? drilled : (settingsOf(stack.steps)[0]?.from ?? 0) - 1,
    travelMm: machine === undefined ? Number.POSITIVE_INFINITY : Math.max(machine.x, machine.y)
  }
}

/** What is against a pin hole at a place, the worst first; null: nothing. */
export function faultAt(ground: Ground, x: number, y: number, diameterMm: number): HoleFault | null {
  const { casting, outline } = ground
  const half = diameterMm / 2
  if (casting.rings.length === 0) return { kind: 'misses', mm: 0, wantedMm: 0, what: '' }
  const edge = nearest(casting, x, y).distanceMm
  if (edge > 0) return { kind: 'misses', mm: edge, wantedMm: 0, what: '' }
  const wall = EDGE_DIAMETERS * diameterMm
  const out = nearest(outline, x, y).distanceMm
  if (out <= half) return { kind: 'inside', mm: half - out, wantedMm: 0, what: '' }
  for (const o of ground.off) {
    const wanted = half + o.clearMm
    const { minX, minY, maxX, maxY } = o.box
    if (x < minX - wanted || x > maxX + wanted || y < minY - wanted || y > maxY + wanted) continue
    const away = nearest(o.region(), x, y).distanceMm
    if (away < wanted - 1e-6)
      return { kind: o.kind, mm: away - half - (o.clearMm - CLEAR_MM), wantedMm: CLEAR_MM, what: o.what }
  }
  if (!ground.freed && out < half + CLEAR_MM + SAW_MM - 1e-6)
    return { kind: 'path', mm: out - half, wantedMm: CLEAR_MM + SAW_MM, what: '' }
  if (-edge < wall - 1e-6) return { kind: 'wall', mm: -edge, wantedMm: wall, what: '' }
  return solid(ground, x, y, wall) ? null : { kind: 'hollow', mm: 0, wantedMm: 0, what: '' }
}

// One body from below to near the top, at the hole and round it.
function solid({ stack, day }: Ground, x: number, y: number, radius: number): boolean {
  const state = stack.states[Math.max(0, day)]
  if (state === undefined) return false
  const events = stack.events.slice(0, state.events)
  const whole = (px: number, py: number) => {
    const core = coreAt(stack.geometry, events, px, py).filter(p => p.material.kind !== 'former')
    const [low, high] = [core[0], core.at(-1)]
    if (low === undefined || high === undefined) return false
    if (core.some((p, i) => i > 0 && p.from - core[i - 1]!.to > SAME_MM)) return false
    return high.to - low.from >= LEAST_SHARE * (state.highZ - state.lowZ)
  }
  if (!whole(x, y)) return false
  for (let k = 0; k < ROUND; k++) {
    const a = (2 * Math.PI * k) / ROUND
    if (!whole(x + 0.99 * radius * Math.cos(a), y + 0.99 * radius * Math.sin(a))) return false
  }
  return true
}

/** Whether a place lies in an ear of waste. */
export function inEar(ground: Ground, x: number, y: number): boolean {
  const box = bounds(ground.outline)
  const { margin, shape } = ground.stack.piece.mould
  if (shape !== undefined) return false
  const beyond =
    x < box.minX - margin || x > box.maxX + margin || y < box.minY - margin || y > box.maxY + margin
  return beyond && inside(ground.casting, x, y)
}
