import type { Bounds, Region } from '../shape/region.ts'
import type { CoreInterval } from './core.ts'
import { coreAt, floorAt } from './core.ts'
import type { Removal, StackEvent } from './event.ts'
import { removalAt } from './event.ts'
import type { Geometry } from './geometry.ts'
import { forRuns, type Grid, pixelX, pixelY } from './grid-rows.ts'
import { halfWidthAt, riseAt } from './groove.ts'
import { forNear } from './groove-grid.ts'
import { sideGrid } from './side-grid.ts'
import type { Solid } from './solid.ts'
import { topAt } from './top.ts'

/**
 * The cores of a piece at every pixel of a grid over its plan.
 *
 * Pixels are told apart by what their cores can differ in: in which timbers, regions and cuts they lie, and how high a
 * slanted side, an uneven top or the flank of a groove stands there. The first pixel of each kind is asked for its
 * exact core (core.ts), and speaks for the others.
 *
 * Limits: heights of sides, tops and flanks are told apart in steps of {@link STEP_MM}; everything else is exact at the
 * place a pixel is looked at. Check: the core of every pixel asked by itself, on seeded pieces.
 */
export interface CoreGrid extends Grid {
  /** Which of `cores` each pixel has; -1 outside the outline. */
  readonly at: Int32Array
  /** 1 where a height varies from pixel to pixel: a slanted side, an uneven top, the flank of a groove. */
  readonly varies: Uint8Array
  /** The cores met, heights as cast, from low to high; empty where nothing is. */
  readonly cores: readonly (readonly CoreInterval[])[]
}

/** Step in which heights that vary over the plan are told apart, mm. */
export const STEP_MM = 0.1
/** More pixels than this are refused: an image of 4000 by 4000. */
const MOST_PIXELS = 16_000_000
/** Steps of height are whole numbers below this. */
const STEPS = 65_536

/** What a grid of cores may ask beyond the piece inside its outline. */
export interface GridAsk {
  /** Where there are cores; left out: inside the outline. */
  readonly within?: readonly Region[]
  /** Regions across whose edges pixels are told apart as well. */
  readonly dividers?: readonly Region[]
  /** Step in which heights that vary are told apart, mm; left out: {@link STEP_MM}. */
  readonly stepMm?: number
}

/**
 * @param heights lowest and highest the finished piece reaches, mm as cast: what varies beyond them is all one
 * @throws RangeError for a grid without pixels or with more than 16 million
 */
export function coreGrid(
  g: Geometry,
  events: readonly StackEvent[],
  box: Bounds,
  pixelMm: number,
  heights: readonly [low: number, high: number]
): CoreGrid {
  const nx = Math.ceil((box.maxX - box.minX) / pixelMm)
  const ny = Math.ceil((box.maxY - box.minY) / pixelMm)
  const grid: Grid = { nx, ny, pixelMm, x0: box.minX, y0: box.minY }
  const kinds = kindsOver(g, events, grid, heights, {}, (x, y) => coreAt(g, events, x, y))
  return { ...grid, at: kinds.at, varies: kinds.varies, cores: kinds.answers }
}

/** Pixels told apart by their cores, and what was answered at one of each kind. */
export interface KindGrid<T> {
  /** Which of `answers` each pixel has; -1 where there are no cores. */
  readonly at: Int32Array
  readonly varies: Uint8Array
  readonly answers: readonly T[]
}

/**
 * The same over pixels that are given (a part of a larger grid), told apart as finely as wanted; the first pixel of each
 * kind is asked whatever the cores decide.
 */
export function kindsOver<T>(
  g: Geometry,
  events: readonly StackEvent[],
  pixels: Grid,
  heights: readonly [low: number, high: number],
  ask: GridAsk,
  answer: (x: number, y: number) => T
): KindGrid<T> {
  const { nx, ny, pixelMm, x0, y0 } = pixels
  if (!(nx * ny >= 1 && nx * ny <= MOST_PIXELS))
    throw new RangeError(`a grid of ${nx} by ${ny} pixels; allowed 1 to ${MOST_PIXELS} in all`)
  const grid: Grid = { nx, ny, pixelMm, x0, y0 }
  const kinds = new Kinds(grid, ask.stepMm ?? STEP_MM)
  for (const r of ask.within ?? [g.outline])
    forRuns(grid, r, (row, from, to) => kinds.open(row * nx + from, row * nx + to))
  const seen = new Set<object>()
  const region = (r: Region | null) => {
    if (r === null || seen.has(r)) return
    seen.add(r)
    kinds.divide()
    forRuns(grid, r, (row, from, to) => {
      for (let p = row * nx + from; p < row * nx + to; p++) kinds.part(p, 0)
    })
  }
  const removal = (r: Removal) => {
    if (r.under !== undefined) region(r.under.region)
    if (r.flare !== undefined) return flared(grid, r, heights, kinds)
    if (r.region !== null || seen.has(r.lines!)) return region(r.region)
    seen.add(r.lines!)
    groove(grid, r, heights, kinds)
  }
  for (const e of events) {
    if (e.kind === 'timber') timber(grid, g.timbers[e.index]!, heights, kinds, region)
    else if (e.kind === 'former') region(g.formers[e.index]!.region)
    else if (e.kind === 'pour') region(e.region ?? g.mould)
    else if (e.kind === 'flood') region(e.region ?? (ask.within === undefined ? null : g.outline))
    else if (e.kind === 'cut' || e.kind === 'mark') removal(e.removal)
    else if (e.kind === 'fill') e.removals.forEach(removal)
  }
  ask.dividers?.forEach(region)
  return kinds.answered(answer)
}

// Where its edges run, and how high its side and its top stand.
function timber(
  grid: Grid,
  solid: Solid,
  heights: readonly [number, number],
  kinds: Kinds,
  region: (r: Region) => void
): void {
  region(solid.upper)
  if (solid.lofts !== null) {
    region(solid.lower)
    kinds.divide()
    const { times, share } = sideGrid(grid, solid.lofts)
    for (let p = 0; p < times.length; p++) {
      if (times[p] === 0) continue
      // Pierced more than once, a place speaks for itself alone.
      if (times[p]! > 1) kinds.alone(p)
      else kinds.vary(p, kinds.stepOf(solid.base + share[p]! * (solid.edge - solid.base), heights))
    }
  }
  if (solid.top.kind === 'flat') return
  kinds.divide()
  for (const edge of solid.lofts === null ? [solid.upper] : [solid.upper, solid.lower])
    forRuns(grid, edge, (row, from, to) => {
      const y = pixelY(grid, row)
      for (let i = from; i < to; i++)
        kinds.vary(row * grid.nx + i, kinds.stepOf(topAt(solid.top, pixelX(grid, i), y), heights))
    })
}

function groove(grid: Grid, r: Removal, heights: readonly [number, number], kinds: Kinds): void {
  const profile = r.profile!
  const deepest = r.side === 'low' ? r.floor - heights[0] : heights[1] - r.floor
  // A face that is worked down later may stand higher on the day; what reaches beyond the finished one is gone by then.
  const reach = profile.kind === 'v' ? halfWidthAt(profile, Math.max(0, deepest)) : profile.widthMm / 2
  if (!(reach > 0) || !Number.isFinite(reach)) return
  kinds.divide()
  forNear(grid, r.lines!, reach, (pixel, distance) => {
    const rise = riseAt(profile, distance)
    if (rise !== null)
      kinds.part(pixel, kinds.stepOf(r.side === 'low' ? r.floor - rise : r.floor + rise, heights))
  })
}

// Sloping walls of a region: as high at each pixel as it lies far from the edge.
function flared(grid: Grid, r: Removal, heights: readonly [number, number], kinds: Kinds): void {
  const widest = removalAt(r, r.side === 'low' ? heights[0] : heights[1])
  kinds.divide()
  forRuns(grid, widest, (row, from, to) => {
    const y = pixelY(grid, row)
    for (let i = from; i < to; i++) {
      const floor = floorAt(r, pixelX(grid, i), y)
      if (floor !== null) kinds.part(row * grid.nx + i, kinds.stepOf(floor, heights))
    }
  })
}

/** Kinds of pixels: each divider parts the kinds it meets. Numbers only, no text: a pixel costs one look at a map. */
class Kinds {
  private readonly grid: Grid
  private readonly kind: Int32Array
  private readonly varies: Uint8Array
  private readonly stepMm: number
  private readonly known = new Map<number, number>()
  private count = 1
  private lastFrom = -1
  private lastTo = -1

  constructor(grid: Grid, stepMm: number) {
    this.grid = grid
    this.stepMm = stepMm
    this.kind = new Int32Array(grid.nx * grid.ny).fill(-1)
    this.varies = new Uint8Array(grid.nx * grid.ny)
  }

  /** A height in steps. What lies beyond the finished piece is cut off, however high. */
  stepOf(z: number, [low, high]: readonly [number, number]): number {
    const step = this.stepMm
    return 1 + Math.round((Math.min(high + step, Math.max(low - step, z)) - low + 2 * step) / step)
  }

  open(from: number, to: number): void {
    this.kind.fill(0, from, to)
  }

  /** A new divider begins. */
  divide(): void {
    this.lastFrom = -1
    this.known.clear()
  }

  /** Sets a pixel apart from those of its kind that the divider at hand does not meet at this step. */
  part(pixel: number, step: number): void {
    const from = this.kind[pixel]!
    if (from < 0) return
    const key = from * STEPS + step
    if (key === this.lastFrom) {
      this.kind[pixel] = this.lastTo
      return
    }
    let to = this.known.get(key)
    if (to === undefined) {
      to = this.count++
      this.known.set(key, to)
    }
    this.lastFrom = key
    this.lastTo = to
    this.kind[pixel] = to
  }

  /** The same, where the step changes from pixel to pixel. */
  vary(pixel: number, step: number): void {
    this.part(pixel, step)
    this.varies[pixel] = 1
  }

  alone(pixel: number): void {
    this.varies[pixel] = 1
    if (this.kind[pixel]! >= 0) this.kind[pixel] = this.count++
  }

  /** What is said of each kind that is left, asked at its first pixel. */
  answered<T>(ask: (x: number, y: number) => T): KindGrid<T> {
    const { grid, kind } = this
    const number = new Int32Array(this.count).fill(-1)
    const answers: T[] = []
    for (let p = 0; p < kind.length; p++) {
      const k = kind[p]!
      if (k < 0) continue
      if (number[k]! < 0) {
        number[k] = answers.length
        answers.push(ask(pixelX(grid, p % grid.nx), pixelY(grid, Math.floor(p / grid.nx))))
      }
      kind[p] = number[k]!
    }
    return { at: kind, varies: this.varies, answers }
  }
}
