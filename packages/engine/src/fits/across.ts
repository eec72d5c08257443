import { grainDegOf } from '../piece/grain.ts'
import type { Shape } from '../piece/shape-field.ts'
import { bounds } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { Stack } from '../stack/stack.ts'
import { extent } from './season.ts'
import type { Walls } from './walls.ts'
import { placesBeside, placesRound } from './walls.ts'

/** Which size of a hole is followed: the one that moves most, else the narrower. */
export type Measured = 'diameter' | 'width' | 'across the grain' | 'narrower side'

/** What is known of the size of a hole before its walls are. */
export interface Across {
  readonly places: [number, number][]
  readonly mm: number
  readonly measured: Measured
  /** The same along another direction than x, for what moves across the grain; degrees. */
  readonly alongMm: ((degrees: number) => number) | null
  /** Share of the width of a groove that lies across a grain, 0 to 1. */
  readonly share: (grainDeg: number) => number
}

/** The size of a cut; null where a width says nothing: V lines, nothing to take. */
export function acrossOf(stack: Stack, index: number): Across | null {
  const { shape, profile, width } = stack.entries.cuts[index]!.value
  const lines = stack.geometry.cutLines[index] ?? null
  if (lines !== null)
    return profile === 'v' || width === undefined
      ? null
      : {
          places: placesBeside(lines, width),
          mm: width,
          measured: 'width',
          alongMm: null,
          share: grain => shareAcross(lines, grain)
        }
  const region = stack.geometry.cutRegions[index] ?? null
  return region === null || region.rings.length === 0 ? null : acrossShape(region, shape)
}

/** The size of a plane shape. */
export function acrossShape(region: Region, shape: Shape | undefined): Across {
  const b = bounds(region)
  const grown = 2 * (shape?.grow ?? 0)
  const drawn = shape?.circle ?? (shape?.rectangle === undefined ? undefined : Math.min(...shape.rectangle))
  const round = shape?.circle !== undefined
  return {
    places: placesRound(region),
    mm: drawn === undefined ? Math.min(b.maxX - b.minX, b.maxY - b.minY) : drawn + grown,
    measured: round ? 'diameter' : 'narrower side',
    alongMm: round ? null : degrees => extent(region, degrees),
    share: () => 1
  }
}

// A groove along the grain moves with its whole width, one across it not at all.
function shareAcross(lines: readonly Float64Array[], grainDeg: number): number {
  const a = (grainDeg * Math.PI) / 180
  let [across, long] = [0, 0]
  for (const line of lines)
    for (let k = 0; k + 3 < line.length; k += 2) {
      const [dx, dy] = [line[k + 2]! - line[k]!, line[k + 3]! - line[k + 1]!]
      const mm = Math.hypot(dx, dy)
      if (mm === 0) continue
      long += mm
      across += (dx * Math.cos(a) + dy * Math.sin(a)) ** 2 / mm
    }
  return long === 0 ? 0 : across / long
}

/** The size that is followed: in timber the one across its grain, with the share of it that moves. */
export function followed(
  stack: Stack,
  across: Across,
  walls: Walls
): { mm: number; measured: Measured; share: number } {
  let [timber, most, all]: [number | null, number, number] = [null, 0, 0]
  for (const [index, share] of walls.timbers) {
    all += share
    if (share > most) [timber, most] = [index, share]
  }
  if (timber === null) return { ...across, share: 0 }
  const grain = grainDegOf(stack.piece.timbers[timber]!, stack.geometry.timbers[timber]!.upper)
  if (across.alongMm === null || all <= 0.5) return { ...across, share: across.share(grain) }
  return { mm: across.alongMm(grain + 90), measured: 'across the grain', share: 1 }
}
