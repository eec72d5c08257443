import { difference, intersection } from '../shape/combine.ts'
import { area, bounds } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { Removal } from './event.ts'
import { removalAt } from './event.ts'
import type { Stack } from './stack.ts'

/** A zone of stones or a placed stone that a cut runs into. Places are on the plan, mm. */
export interface StonesMet {
  readonly pour: number
  readonly entry: number
  /** How deep it runs into them, mm. */
  readonly mm: number
  /** How far its floor lies past the near side of the stones, mm; Infinity right through. */
  readonly pastMm: number
  readonly x: number
  readonly y: number
}

/** Least area that counts as meeting, mm². */
const MEET_MM2 = 0.5

/** Where stones of a pour lie. Heights mm as cast. */
export interface StonesBed {
  readonly pour: number
  readonly entry: number
  readonly from: number
  readonly to: number
  /** null: wherever no timber lies. */
  readonly zone: Region | null
}

/** Answers which stones of a stack a removal runs into. */
export function stonesOf(stack: Stack): (removal: Removal) => StonesMet[] {
  const beds = stonesBeds(stack)
  let open: Region | null = null
  const openPlan = () => {
    // Where no timber lies, seen from above.
    open ??= stack.geometry.timbers.reduce((rest, t) => difference(rest, t.upper), stack.geometry.mould)
    return open
  }
  return removal => {
    const low = removal.side === 'low'
    return beds.flatMap((bed): StonesMet[] => {
      const deep = low
        ? Math.min(bed.to, removal.floor) - bed.from
        : bed.to - Math.max(bed.from, removal.floor)
      if (!(deep > 1e-6)) return []
      const z = low ? Math.max(bed.from, stack.finishedLow) : Math.min(bed.to, stack.finishedHigh)
      const shared = intersection(
        intersection(removal.region ?? removalAt(removal, z), bed.zone ?? openPlan()),
        stack.geometry.outline
      )
      if (area(shared) < MEET_MM2) return []
      const b = bounds(shared)
      return [
        {
          pour: bed.pour,
          entry: bed.entry,
          mm: Math.min(deep, bed.to - bed.from),
          pastMm: low ? removal.floor - bed.from : bed.to - removal.floor,
          x: (b.minX + b.maxX) / 2,
          y: (b.minY + b.maxY) / 2
        }
      ]
    })
  }
}

/** The zones of stones and the placed stones of a piece, pour by pour. */
export function stonesBeds(stack: Stack): StonesBed[] {
  const { geometry: g, piece } = stack
  return piece.pours.flatMap((pour, p) =>
    pour.stones.flatMap((stones, entry): StonesBed[] => {
      const level = stack.pours[p]!
      if (stones.placed !== undefined)
        return stones.placed.map(s => {
          const from = s.height ?? level.floor
          const zone = disc(s.at, Math.max(s.size[0], s.size[1]) / 2)
          return { pour: p, entry, from, to: from + s.size[2], zone }
        })
      const zone = g.zones[p]![entry] ?? g.pourRegions[p] ?? null
      return [{ pour: p, entry, from: stones.from ?? level.floor, to: stones.to ?? level.level, zone }]
    })
  )
}

function disc([x, y]: readonly [number, number], r: number): Region {
  const ring = new Float64Array(32)
  for (let k = 0; k < 16; k++) {
    ring[2 * k] = x + r * Math.cos((k * Math.PI) / 8)
    ring[2 * k + 1] = y + r * Math.sin((k * Math.PI) / 8)
  }
  return { rings: [ring] }
}
