import type { Materials } from '../cast/facts.ts'
import type { HardwareRecord } from '../catalogue/hardware-record.ts'
import { density12Of } from '../catalogue/timber.ts'
import { grainDegOf } from '../piece/grain.ts'
import type { Hardware } from '../piece/piece-schema.ts'
import { inside } from '../shape/measure.ts'
import type { Stack } from '../stack/stack.ts'
import type { Walls } from './walls.ts'

/** The hole a screw or an insert wants in what it goes into, mm. */
export interface Pilot {
  readonly lowMm: number
  readonly highMm: number
  readonly into: 'timber' | 'resin'
  /** Near an end the timber splits: 10 % more. */
  readonly nearEnd: boolean
  /** It does not hold there at all, and why; null when it does. */
  readonly never: string | null
  /** Source, for a finding. */
  readonly basis: string
}

/**
 * Pilot holes of wood screws, screw-in inserts and machine screws tapped into resin.
 *
 *   timber    from the row's softwood to its hardwood figure, by density at 12 %: 400 kg/m³ and 700 kg/m³
 *   near an end, within 10 diameters along the grain: 10 % more
 *   resin     insert: its outer diameter + 0.1 to 0.2, glued; tapped thread: tap drill to tap drill + 0.1;
 *             wood screw: none, it bursts
 *
 * Source: rows of the catalogue (common practice; inserts near DIN 7965); 70 % of the root in softwood, 90 % in
 * hardwood, Wood Handbook ch. 8 (memory); 0.7·d, EN 1995-1-1 10.4.5 (memory), lies within every row; densities
 * between which a timber counts as soft to hard: judgement.
 * Check: 4.0 in spruce 2.5, in beech 3.0; 4 × 0.7 = 2.8 lies between.
 *
 * Limits: how a screw holds is not said. Screws of other shapes (self-drilling, coarse) have their own sheet.
 */
const SOFT_KG_M3 = 400
const HARD_KG_M3 = 700
const MIDDLING_KG_M3 = 550
const END_DIAMETERS = 10
const END_FACTOR = 1.1

const PRACTICE =
  'pilot: common practice; near EN 1995-1-1 10.4.5 and Wood Handbook ch. 8 (memory); softwood to hardwood by density'

/** The pilot of a part at its place; null for parts that need none. */
export function pilotOf(
  stack: Stack,
  materials: Materials,
  h: Hardware,
  record: HardwareRecord,
  walls: Walls,
  at: readonly [x: number, y: number]
): Pilot | null {
  const [timber, inTimber] = mostOf(walls.timbers)
  const [, inResin] = mostOf(walls.pours)
  if (timber === null && inResin === 0) return null
  const insert = record.kind === 'threaded insert'
  const wood = record.kind === 'screw' && record.thread === null
  if (inResin > inTimber) {
    const base = { into: 'resin', nearEnd: false, never: null } as const
    if (wood)
      return {
        ...base,
        lowMm: 0,
        highMm: 0,
        never: 'a wood screw bursts resin: give it a threaded insert, or a machine screw in a tapped hole',
        basis: 'wood screws in resin: makers’ reports, common practice'
      }
    const row = record.holes.find(x => x.what.startsWith(insert ? 'glued' : 'tap drill'))
    if (row === undefined) return null
    const [low, high] =
      insert && h.diameter !== undefined ? [h.diameter + 0.1, h.diameter + 0.2] : row.diameterMm
    return { ...base, lowMm: low, highMm: high, basis: `hole in resin: ${record.source}` }
  }
  const row = insert || wood ? record.holes.find(x => x.what.startsWith('pilot')) : undefined
  if (row === undefined || timber === null) return null
  const density = density12Of(materials.timbers[timber]!)?.value ?? MIDDLING_KG_M3
  const hard = Math.min(1, Math.max(0, (density - SOFT_KG_M3) / (HARD_KG_M3 - SOFT_KG_M3)))
  const [low, high] = row.diameterMm
  const nearEnd = !insert && endWithin(stack, timber, at, (END_DIAMETERS * (low + high)) / 2 / 0.7)
  const middle = (low + (high - low) * hard) * (nearEnd ? END_FACTOR : 1)
  const half = (high - low) / 4
  return {
    lowMm: middle - half,
    highMm: middle + half,
    into: 'timber',
    nearEnd,
    never: null,
    basis: PRACTICE
  }
}

function mostOf(shares: ReadonlyMap<number, number>): [index: number | null, share: number] {
  let [index, most]: [number | null, number] = [null, 0]
  for (const [k, share] of shares) if (share > most) [index, most] = [k, share]
  return [index, [...shares.values()].reduce((sum, x) => sum + x, 0)]
}

// Whether the timber, or the piece, ends so near along the grain.
function endWithin(stack: Stack, timber: number, [x, y]: readonly [number, number], mm: number): boolean {
  const { outline, timbers } = stack.geometry
  const solid = timbers[timber]!
  const a = (grainDegOf(stack.piece.timbers[timber]!, solid.upper) * Math.PI) / 180
  for (const sign of [-1, 1])
    for (let s = 1; s <= mm; s++) {
      const [px, py] = [x + sign * s * Math.cos(a), y + sign * s * Math.sin(a)]
      if (!inside(outline, px, py) || !inside(solid.upper, px, py)) return true
    }
  return false
}
