import type { PeakMap } from '../cast/whole/whole-cast.ts'
import { decimals } from '../quantity/format.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { fromFixedUnit, toFixedUnit } from '../quantity/unit.ts'
import { CAUTION_ABOVE_C } from '../resin/limits.ts'
import type { Bounds } from '../shape/region.ts'
import type { Mark } from './mark.ts'
import { CAPTION_MM, text } from './mark.ts'
import type { PageView } from './page-data.ts'

/** One level of the map: the contour of so many degrees, and the pencil over all that is warmer. */
export interface HeatLevel {
  readonly tempC: number
  /** In the degrees shown, without the unit. */
  readonly words: string
  /** How often the pencil went over it: 1 for the lowest level. */
  readonly strokes: number
}

export interface HeatDrawn {
  readonly levels: readonly HeatLevel[]
  readonly marks: readonly Mark[]
  /** Coolest and warmest on this height, °C. */
  readonly rangeC: readonly [number, number]
}

export interface HeatOptions {
  readonly view: PageView
  readonly shown: ShownUnits
  /** What of the plan is seen, mm: figures stand well within it. */
  readonly within: Bounds
}

/** Most levels drawn: more are not told apart. */
const MOST_LEVELS = 6
const STEPS = [1, 2, 5, 10, 20, 50]
/** Distance of pencil strokes and of the places looked at along them, mm on the sheet. */
const STROKES_MM = 1.9
const LOOK_MM = 0.6
/** Each level is shaded in a direction of its own, so that warmer looks darker: degrees. */
const DIRECTIONS = [45, 135, 15, 105, 75, 165]
/** Labels of levels keep so far apart, mm on the sheet. */
const LABEL_APART_MM = 9

/** The layer of a map that holds a height as cast, mm; the nearest one beyond its ends. */
export function layerAt({ facesMm }: PeakMap, z: number): number {
  const k = facesMm.findIndex((face, i) => i > 0 && z < face)
  return k < 0 ? facesMm.length - 2 : k - 1
}

/**
 * The highest temperatures of one height as cast, as a pencil would draw them on tracing paper: contours with their
 * degrees, and strokes over what is warmer, denser with each level. The limit for clear work has its own ink.
 *
 * Between the middles of cells the map is taken as bilinear; where a neighbour is not cast, as the cell's own.
 */
export function heatDrawn(map: PeakMap, z: number, { view, shown, within }: HeatOptions): HeatDrawn {
  const at = fieldOf(map, layerAt(map, z))
  const rangeC = rangeOf(map, layerAt(map, z))
  const levels = levelsOf(rangeC, shown)
  const marks: Mark[] = []
  levels.forEach((level, k) => {
    marks.push({ kind: 'path', ink: 'hatch', lines: strokes(map, at, level.tempC, DIRECTIONS[k]!, view) })
  })
  const labels: Mark[] = []
  const room = roomFor(within, view)
  const taken: (readonly [number, number])[] = []
  for (const { tempC, words } of levels) {
    const lines = contour(map, at, tempC, view)
    marks.push({ kind: 'path', ink: tempC === CAUTION_ABOVE_C ? 'limit' : 'outline', lines })
    const spot = labelSpot(lines, taken, room)
    if (spot === null) continue
    taken.push(spot)
    labels.push(
      text([spot[0], spot[1] - 1.1], words, { anchor: 'middle', strong: true, heightMm: CAPTION_MM })
    )
  }
  return { levels, marks: [...marks, { kind: 'group', name: 'degrees', marks: labels }], rangeC }
}

type Field = (x: number, y: number) => number

function fieldOf(map: PeakMap, iz: number): Field {
  const { nx, ny, dxMm, dyMm, x0, y0, peakC } = map
  const cell = (ix: number, iy: number) =>
    ix < 0 || iy < 0 || ix >= nx || iy >= ny ? Number.NaN : peakC[(iz * ny + iy) * nx + ix]!
  return (x, y) => {
    const u = (x - x0) / dxMm - 0.5
    const v = (y - y0) / dyMm - 0.5
    const [ix, iy] = [Math.floor(u), Math.floor(v)]
    const [fx, fy] = [u - ix, v - iy]
    const own = cell(Math.round(u), Math.round(v))
    if (Number.isNaN(own)) return own
    const or = (t: number) => (Number.isNaN(t) ? own : t)
    const low = or(cell(ix, iy)) * (1 - fx) + or(cell(ix + 1, iy)) * fx
    const high = or(cell(ix, iy + 1)) * (1 - fx) + or(cell(ix + 1, iy + 1)) * fx
    return low * (1 - fy) + high * fy
  }
}

function rangeOf({ nx, ny, peakC }: PeakMap, iz: number): [number, number] {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let k = iz * nx * ny; k < (iz + 1) * nx * ny; k++) {
    const c = peakC[k]!
    if (c < low) low = c
    if (c > high) high = c
  }
  return high < low ? [Number.NaN, Number.NaN] : [low, high]
}

/** Whole degrees of the unit shown, as many as can be told apart; the limit among them where it is reached. */
function levelsOf([low, high]: readonly [number, number], shown: ShownUnits): HeatLevel[] {
  if (!(high > low)) return []
  const unit = shown.temperature
  const [from, to] = [fromFixedUnit(low, unit), fromFixedUnit(high, unit)]
  const step = STEPS.find(s => (to - from) / s <= MOST_LEVELS) ?? 100
  const degrees: number[] = []
  for (let d = Math.ceil(from / step) * step; d < to; d += step) if (d > from) degrees.push(d)
  const limit = fromFixedUnit(CAUTION_ABOVE_C, unit)
  if (limit > from && limit < to && !degrees.includes(limit)) {
    // It takes the place of the level nearest to it.
    const off = degrees.map(d => Math.abs(d - limit))
    const near = off.indexOf(Math.min(...off))
    degrees.splice(Math.max(0, near), near < 0 ? 0 : 1, limit)
    degrees.sort((a, b) => a - b)
  }
  return degrees.slice(-MOST_LEVELS).map((d, k) => ({
    tempC: d === limit ? CAUTION_ABOVE_C : toFixedUnit(d, unit),
    words: decimals(d, 0),
    strokes: k + 1
  }))
}

interface Place {
  readonly to: (x: number, y: number) => readonly [number, number]
  readonly from: (sx: number, sy: number) => readonly [number, number]
}

// Places of the plan on the sheet of its view, y up, and back.
function placeOn(v: PageView): Place {
  const side = v.face === 'back' ? -1 : 1
  return {
    to: (x, y) => [v.originX + side * x * v.scale, v.originY + y * v.scale],
    from: (sx, sy) => [(side * (sx - v.originX)) / v.scale, (sy - v.originY) / v.scale]
  }
}

function strokes(map: PeakMap, at: Field, level: number, deg: number, v: PageView): Float64Array[] {
  const place = placeOn(v)
  const corners = [
    place.to(map.x0, map.y0),
    place.to(map.x0 + map.nx * map.dxMm, map.y0 + map.ny * map.dyMm)
  ] as const
  const [ax, bx] = [Math.min(corners[0][0], corners[1][0]), Math.max(corners[0][0], corners[1][0])]
  const [ay, by] = [corners[0][1], corners[1][1]]
  const [cx, cy] = [(ax + bx) / 2, (ay + by) / 2]
  const reach = Math.hypot(bx - ax, by - ay) / 2
  const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)]
  const out: Float64Array[] = []
  const end = (begin: readonly [number, number] | null, last: readonly [number, number]) => {
    if (begin !== null) out.push(Float64Array.of(...begin, ...last))
  }
  for (let across = -reach; across <= reach; across += STROKES_MM) {
    let begin: readonly [number, number] | null = null
    let last: readonly [number, number] = [0, 0]
    for (let along = -reach; along <= reach; along += LOOK_MM) {
      const spot = [cx + c * along - s * across, cy + s * along + c * across] as const
      const inside = spot[0] >= ax && spot[0] <= bx && spot[1] >= ay && spot[1] <= by
      if (inside && at(...place.from(...spot)) > level) {
        begin ??= spot
        last = spot
      } else {
        end(begin, last)
        begin = null
      }
    }
    end(begin, last)
  }
  return out
}

/** Marching squares between the middles of cells: a short line in each square that the level crosses. */
function contour(map: PeakMap, at: Field, level: number, v: PageView): Float64Array[] {
  const { nx, ny, dxMm, dyMm, x0, y0 } = map
  const place = placeOn(v)
  const out: Float64Array[] = []
  const middle = (ix: number, iy: number) => [x0 + (ix + 0.5) * dxMm, y0 + (iy + 0.5) * dyMm] as const
  for (let iy = 0; iy + 1 < ny; iy++)
    for (let ix = 0; ix + 1 < nx; ix++) {
      const corners = [middle(ix, iy), middle(ix + 1, iy), middle(ix + 1, iy + 1), middle(ix, iy + 1)]
      const temps = corners.map(([x, y]) => at(x, y))
      if (temps.some(Number.isNaN)) continue
      const cuts: (readonly [number, number])[] = []
      for (let k = 0; k < 4; k++) {
        const [t, u] = [temps[k]!, temps[(k + 1) % 4]!]
        if (t > level === u > level) continue
        const part = (level - t) / (u - t)
        const [p, q] = [corners[k]!, corners[(k + 1) % 4]!]
        cuts.push([p[0] + part * (q[0] - p[0]), p[1] + part * (q[1] - p[1])])
      }
      for (let k = 0; k + 1 < cuts.length; k += 2)
        out.push(Float64Array.of(...place.to(...cuts[k]!), ...place.to(...cuts[k + 1]!)))
    }
  return out
}

/** How far from the edge of what is seen a figure stands, mm on the sheet. */
const LABEL_IN_MM = 5

function roomFor({ minX, maxX, minY, maxY }: Bounds, view: PageView): Bounds {
  const { to } = placeOn(view)
  const [a, b] = [to(minX, minY), to(maxX, maxY)]
  return {
    minX: Math.min(a[0], b[0]) + LABEL_IN_MM,
    maxX: Math.max(a[0], b[0]) - LABEL_IN_MM,
    minY: a[1] + LABEL_IN_MM,
    maxY: b[1] - LABEL_IN_MM
  }
}

// Where on its contour a level's figure is farthest from the others; null where there is no room.
function labelSpot(
  lines: readonly Float64Array[],
  taken: readonly (readonly [number, number])[],
  room: Bounds
): readonly [number, number] | null {
  let best: readonly [number, number] | null = null
  let far = LABEL_APART_MM
  for (let i = 0; i < lines.length; i += 4) {
    const [x, y] = [lines[i]![0]!, lines[i]![1]!]
    if (x < room.minX || x > room.maxX || y < room.minY || y > room.maxY) continue
    const near = taken.reduce((least, [a, b]) => Math.min(least, Math.hypot(x - a, y - b)), 1e3)
    if (near > far) {
      far = near
      best = [x, y]
    }
  }
  return best
}
