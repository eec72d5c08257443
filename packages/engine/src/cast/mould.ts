import type { CutList } from '../mould/cutlist.ts'
import { waterTestMassG } from '../mould/leak.ts'
import type { Level } from '../mould/level.ts'
import { cornersFromHeights, levelFromReadings } from '../mould/level.ts'
import { baseLoadNPerM2, bearerSpacingForSagMm, bearersForSag, sagMm } from '../mould/sag.ts'
import { shapedCutList } from '../mould/shaped.ts'
import { FREEBOARD_MM, fixingSpacingForBowMm, leastWallHeightMm, wallLoad } from '../mould/wall.ts'
import { intersection, union } from '../shape/combine.ts'
import { area, bounds, nearest, perimeter } from '../shape/measure.ts'
import type { Stack } from '../stack/stack.ts'
import { needsMould } from '../steps/step.ts'
import type { Materials } from './facts.ts'

/** The mould as a made thing. mm unless the name says. */
export interface MouldPlan {
  /** false: nothing is cast and no mould is made; all else here then says nothing of the piece. */
  readonly needsMould: boolean
  readonly innerLength: number
  readonly innerWidth: number
  /** Deepest the resin stands when poured. */
  readonly liquidLevel: number
  /** Height of the walls: the document's, else the least. */
  readonly wall: number
  readonly leastWall: number
  readonly freeboard: number
  readonly baseLoadNPerM2: number
  /** Distance between bearers: the document's, else the widest that keeps the base within {@link SAG_LIMIT_MM}. */
  readonly bearers: number
  /** null: a base that cannot span must lie flat. */
  readonly sag: number | null
  readonly widestBearers: number | null
  readonly wallForceNPerM: number
  readonly wallFixings: number
  readonly level: Level | null
  readonly cutList: CutList
  /** Water of the test up to the level, formers taken off, g: timbers are not in yet. */
  readonly waterG: number
  /** Least distance from a timber to the wall of the mould; null without timbers. */
  readonly timberToWall: { readonly timber: number; readonly gap: number } | null
  /** Area of the mould on the plan and length of its edge. */
  readonly areaMm2: number
  readonly edge: number
}

/** Sag of the base that flattening must take off: 0.2 mm between bearers (common practice: a hair under a straightedge). */
export const SAG_LIMIT_MM = 0.2
/** Bow of a wall between fixings that is let pass: 0.5 mm (common practice). */
const BOW_LIMIT_MM = 0.5
/** Density that loads the base and the walls, kg/m³: the heavier, cured resin (memory, 1150-1200). */
const LOAD_KG_M3 = 1157

/** Plans the mould from what will stand in it. */
export function mouldPlan(stack: Stack, materials: Materials): MouldPlan {
  const { piece, geometry } = stack
  const { base, walls } = materials
  const b = bounds(geometry.mould)
  const innerLength = b.maxX - b.minX
  const innerWidth = b.maxY - b.minY
  const casts = stack.pours.filter((_, i) => piece.pours[i]!.kind === 'cast')
  const liquidLevel = Math.max(1, ...casts.map(p => (Number.isFinite(p.liquidLevel) ? p.liquidLevel : 0)))
  const highest = Math.max(liquidLevel, ...geometry.timbers.map(t => t.high))
  const corners = piece.mould.corners
  const level =
    corners === undefined
      ? null
      : levelFromReadings(
          cornersFromHeights(
            within(innerLength, 1, 20_000),
            within(innerWidth, 1, 20_000),
            corners as unknown as [number, number, number, number]
          )
        )
  const outOfLevel = level === null ? 0 : level.wedgeMm / 2
  const leastWall = leastWallHeightMm(liquidLevel, outOfLevel, FREEBOARD_MM)
  const wall = piece.mould.wall ?? Math.ceil(leastWall)
  const load = baseLoadNPerM2(highest, LOAD_KG_M3, {
    thicknessMm: base.thicknessMm,
    densityKgM3: base.densityKgM3
  })
  const beam = { thicknessMm: base.thicknessMm, modulusGPa: base.modulusPa / 1e9, loadNPerM2: load }
  const widest = base.spans ? bearerSpacingForSagMm(beam, SAG_LIMIT_MM) : null
  const usual =
    widest === null
      ? 0
      : Math.min(
          widest,
          bearersForSag(beam, within(Math.max(innerLength, innerWidth), 10, 10_000), SAG_LIMIT_MM).spacingMm
        )
  const bearers = piece.mould.bearers ?? usual
  // A base that is shorter than that rests on bearers at its ends.
  const longest = Math.max(innerLength, innerWidth) + 2 * walls.thicknessMm
  const push = wallLoad(Math.min(liquidLevel, 1000), LOAD_KG_M3)
  const fixings = walls.spans
    ? fixingSpacingForBowMm(
        {
          heightMm: within(wall, 1, 2000),
          thicknessMm: walls.thicknessMm,
          modulusGPa: walls.modulusPa / 1e9
        },
        push.forceNPerM,
        BOW_LIMIT_MM
      )
    : innerLength
  const count = bearers > 0 ? Math.max(2, Math.ceil(innerLength / bearers) + 1) : 0
  return {
    needsMould: needsMould(piece),
    innerLength,
    innerWidth,
    liquidLevel,
    wall,
    leastWall,
    freeboard: wall - liquidLevel - outOfLevel,
    baseLoadNPerM2: load,
    bearers,
    sag: base.spans && bearers > 0 ? sagMm(beam, within(Math.min(bearers, longest), 1, 10_000)) : null,
    widestBearers: widest,
    wallForceNPerM: push.forceNPerM,
    wallFixings: fixings,
    level,
    cutList: shapedCutList(
      geometry.mould,
      {
        wallHeightMm: Math.max(1, wall),
        baseThicknessMm: base.thicknessMm,
        wallThicknessMm: walls.thicknessMm,
        runPast: 'along x',
        bearers: Math.min(count, 200),
        joints: piece.mould.joints
      },
      piece.tolerance
    ),
    waterG: waterG(geometry, liquidLevel),
    timberToWall: timberToWall(stack),
    areaMm2: area(geometry.mould),
    edge: perimeter(geometry.mould)
  }
}

// A piece may be a hairline crack or longer than any board: the models' ranges are met, never overrun.
function within(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value))
}

// Water up to a level, less what the formers take: between the heights at which one begins or ends.
function waterG({ mould, formers }: Stack['geometry'], level: number): number {
  const within = (z: number | null) => Math.min(level, Math.max(0, z ?? level))
  const heights = [0, level, ...formers.flatMap(f => [within(f.from), within(f.to)])].sort((a, b) => a - b)
  const full = area(mould)
  let sum = 0
  for (let k = 1; k < heights.length; k++) {
    const [low, high] = [heights[k - 1]!, heights[k]!]
    if (!(high > low)) continue
    const standing = formers.filter(f => f.from <= low && within(f.to) >= high)
    const taken = standing.length === 0 ? 0 : area(intersection(union(...standing.map(f => f.region)), mould))
    // A mould that is all former takes none.
    if (full - taken > 1e-3) sum += waterTestMassG(full - taken, high - low)
  }
  return sum
}

// The corner of a timber that stands nearest to a wall.
function timberToWall(stack: Stack): MouldPlan['timberToWall'] {
  let best: MouldPlan['timberToWall'] = null
  stack.geometry.timbers.forEach((t, timber) => {
    for (const ring of [...t.upper.rings, ...(t.lofts === null ? [] : t.lower.rings)]) {
      // Every point of a coarse outline, a sample of a fine one: its corners decide.
      const step = 2 * Math.max(1, Math.floor(ring.length / 2 / 400))
      for (let k = 0; k < ring.length; k += step) {
        const gap = -nearest(stack.geometry.mould, ring[k]!, ring[k + 1]!).distanceMm
        if (best === null || gap < best.gap) best = { timber, gap: Math.max(0, gap) }
      }
    }
  })
  return best
}
