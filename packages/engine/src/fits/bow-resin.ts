import type { PourCast } from '../cast/cast.ts'
import type { ResinKinetics, ResinRecord } from '../catalogue/resin.ts'
import { RESIN_ELASTIC } from '../catalogue/resin-elastic.ts'
import { conversionAtGlass, glassTransitionC } from '../resin/glass.ts'

/**
 * What a pour pulls on what it is bonded to, from the moment at which it is stiff.
 *
 *   e(t) = −S/3·(α(t) − α*) − CTE·(T* − T(t))
 *
 *   S   shrinkage by volume, fraction, taken as linear in conversion    α, T  conversion and temperature of the pour
 *   *   central: where its glass transition first reaches its own temperature; before that it is soft as rubber and
 *       pulls next to nothing. upper: where it is still {@link GLASS_WIDTH_K} short of it.
 *   end: its glass transition stands {@link OVER_ROOM_K} over the room: there the cure all but stops.
 *
 * Source: stress-free state at vitrification, shrinkage in thirds (derived); moduli of glass and rubber a hundred
 * apart (memory). Check: nothing before it is stiff; never more than all that falls after gel, S·(1 − αg)/3
 * (resin/shrinkage), and what it cools by (test).
 *
 * Limits: the mean conversion and the hottest place of the pour stand for all of it; stones and pigments in it are
 * not counted.
 */
export interface Contraction {
  /** Minutes after the pour at which it is stiff, by either: what is bonded to it then is bonded without stress. */
  readonly stiffMin: readonly [central: number, upper: number]
  /** Free strain, negative, so many minutes after the pour; Infinity: cured to the end, at room temperature. */
  at(min: number): readonly [central: number, upper: number]
}

/** Glass transition over the room at which a cure in it all but stops, K: the middle of 10 to 25 (fitted, as resin.ts). */
const OVER_ROOM_K = 15
/** Half of the span over which a resin turns from rubber to glass, K: transitions of epoxies span 20 to 40 (memory). */
const GLASS_WIDTH_K = 15

/** When a pour is stiff enough to pull, and how it stands then. */
interface Stiff {
  readonly min: number
  readonly conversion: number
  readonly tempC: number
}

/** @param shrinkage by volume, fraction: as given or of the class, and at its upper end */
export function contractionOf(
  cast: Pick<PourCast, 'curve'>,
  kinetics: ResinKinetics,
  shrinkage: readonly [central: number, upper: number],
  roomC: number
): Contraction {
  const { min, conversion, hottestC } = cast.curve
  const last = min.length - 1
  const end = Math.max(conversion[last]!, conversionAtGlass(kinetics, roomC + OVER_ROOM_K))
  const stiff = [stiffAt(cast, kinetics, 0), stiffAt(cast, kinetics, GLASS_WIDTH_K)] as const
  const stands = (t: number): readonly [alpha: number, tempC: number] => {
    if (t === Number.POSITIVE_INFINITY) return [end, roomC]
    // Past the days that are followed it creeps on to its end; the course of that is not told.
    const k = Math.max(
      0,
      min.findLastIndex(m => m <= t)
    )
    return [between(min, conversion, k, t), between(min, hottestC, k, t)]
  }
  // Every cross-section asks for the same moment.
  let asked: { readonly t: number; readonly e: readonly [number, number] } | null = null
  return {
    stiffMin: [stiff[0].min, stiff[1].min],
    at: t => {
      if (asked?.t === t) return asked.e
      const [alpha, tempC] = stands(t)
      const pull = (k: 0 | 1): number => {
        const from = stiff[k]
        if (t < from.min) return 0
        const cured = (shrinkage[k] / 3) * Math.max(0, alpha - from.conversion)
        return -(cured + RESIN_ELASTIC.expansionPerK * Math.max(0, from.tempC - tempC))
      }
      asked = { t, e: [pull(0), pull(1)] }
      return asked.e
    }
  }
}

/**
 * The same of a flood coat of the finish, once it has cured: a thin layer that keeps no heat, stiff where its glass
 * transition reaches the room, cured to the end. 0 for a family that is not predicted.
 */
export function filmContraction(
  { model, shrinkagePct, shrinkageBandPct }: ResinRecord,
  roomC: number
): readonly [central: number, upper: number] {
  if (model === null) return [0, 0]
  const { kinetics } = model
  const at = (overRoomK: number) => conversionAtGlass(kinetics, roomC + overRoomK)
  const pull = (pct: number, from: number) => -((pct / 300) * Math.max(0, at(OVER_ROOM_K) - from))
  return [
    pull(shrinkagePct, at(0)),
    pull(shrinkageBandPct[1], Math.max(kinetics.gelConversion, at(-GLASS_WIDTH_K)))
  ]
}

// The first moment at which its glass transition is within so many K of its temperature, but not before gel.
function stiffAt({ curve }: Pick<PourCast, 'curve'>, kinetics: ResinKinetics, shortK: number): Stiff {
  const { min, conversion, hottestC } = curve
  const over = (k: number) => glassTransitionC(kinetics, conversion[k]!) - hottestC[k]! + shortK
  const found = conversion.findIndex((a, k) => a >= kinetics.gelConversion && over(k) >= 0)
  const at = found < 0 ? min.length - 1 : found
  const before = Math.max(0, at - 1)
  const [a, b] = [over(before), over(at)]
  const part = found > 0 && a < 0 ? -a / (b - a) : 1
  const mix = (row: readonly number[]) => row[before]! + part * (row[at]! - row[before]!)
  return { min: mix(min), conversion: mix(conversion), tempC: mix(hottestC) }
}

function between(x: readonly number[], y: readonly number[], k: number, at: number): number {
  const [a, b] = [x[k]!, x[k + 1] ?? x[k]!]
  const part = b > a ? Math.min(1, Math.max(0, (at - a) / (b - a))) : 0
  return y[k]! + part * ((y[k + 1] ?? y[k]!) - y[k]!)
}
