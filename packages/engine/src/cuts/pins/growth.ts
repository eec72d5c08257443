import type { StepTime } from '../../cast/clock.ts'
import { settledPct, shopAir } from '../../fits/air.ts'
import type { Season } from '../../fits/season.ts'
import { grainDegOf } from '../../piece/grain.ts'
import type { Shop } from '../../piece/shop-schema.ts'
import { bounds, inside } from '../../shape/measure.ts'
import type { Bounds, Region } from '../../shape/region.ts'
import type { Stack } from '../../stack/stack.ts'
import { settingsOf } from '../../steps/setting.ts'
import { crossGrainMovement, longitudinalMovement } from '../../timber/movement.ts'
import { DIFFUSION_M2_PER_S, settledFraction } from '../../timber/settle.ts'

/** A timber as it moves while the piece goes from one setting to the next. */
export interface Moving {
  readonly region: Region
  readonly box: Bounds
  readonly grainDeg: number
  /** Change per length across and along the grain, growth positive: low, central, high by size. */
  readonly across: Band
  readonly along: Band
}

export type Band = readonly [low: number, central: number, high: number]

/** Time on the machine bench between the two settings that no wait accounts for, days (practice). */
const LEAST_DAYS = 1
const NONE: Band = [0, 0, 0]
/** Thinnest slab the model of settling takes, mm. */
const LEAST_MM = 0.2
/** Places along a line at which is asked what it runs through. */
const PLACES = 48

/**
 * How the timbers of a piece move between the first setting and the second: freshly opened faces go towards the air
 * of the shop for the days between.
 *
 *   ΔM = (M_shop − M_now)·E(D·t/L²)      ΔL = ∫ C(θ)·ΔM ds,  C(θ) = C·sin²θ + C_L·cos²θ, θ against the grain
 *
 * Source: Wood Handbook eq. 13-2 (timber/movement.ts), Crank's slab (timber/settle.ts); rotation of the strain tensor.
 * Check: pins 200 mm apart across the grain, C 0.0027, 2 %: 1.1 mm (machining.md B6).
 *
 * Limits: resin is taken not to hold the timber back, and not to move. Both faces open.
 */
export function movingOf(
  stack: Stack,
  seasons: readonly Season[],
  clock: readonly StepTime[],
  shop: Shop
): Moving[] {
  const settings = settingsOf(stack.steps)
  const [first, second] = [settings[0], settings.at(-1)]
  if (first === undefined || second === undefined || first === second) return []
  const minutes = (clock[second.from]?.startMin ?? 0) - (clock[first.from]?.startMin ?? 0)
  const days = Math.max(LEAST_DAYS, minutes / 1440)
  const air = shopAir(shop)
  const shopPct = settledPct(air.tempC, air.humidityPct)
  return stack.piece.timbers.map((timber, i): Moving => {
    const region = stack.geometry.timbers[i]!.upper
    const { moisturePct, coefficientPerPct } = seasons[i]!
    const per = (change: (toPct: number) => Band): Band => {
      const at = (d: number) =>
        moisturePct +
        (shopPct - moisturePct) *
          settledFraction(
            { thicknessMm: Math.max(LEAST_MM, timber.thickness), openFaces: 2, diffusionM2PerS: d },
            days
          )
      const { low, central, high } = DIFFUSION_M2_PER_S
      return [change(at(low))[0], change(at(central))[1], change(at(high))[2]]
    }
    const bySize = (a: number, b: number, c: number): Band =>
      Math.abs(a) <= Math.abs(c) ? [a, b, c] : [c, b, a]
    return {
      region,
      box: bounds(region),
      grainDeg: grainDegOf(timber, region),
      across:
        coefficientPerPct === null
          ? NONE
          : per(toPct => {
              const m = crossGrainMovement({ dimensionMm: 1, coefficientPerPct, fromPct: moisturePct, toPct })
              return bySize(m.lowMm, m.centralMm, m.highMm)
            }),
      along: per(toPct => {
        const m = longitudinalMovement(1, moisturePct, toPct)
        return bySize(m.lowMm, m.centralMm, m.highMm)
      })
    }
  })
}

/** How much the distance of two places changes, mm: growth positive, the band by size. */
export function growthMm(
  moving: readonly Moving[],
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number]
): Band {
  const long = Math.hypot(bx - ax, by - ay)
  if (long === 0 || moving.length === 0) return NONE
  const degrees = (Math.atan2(by - ay, bx - ax) * 180) / Math.PI
  const sum = [0, 0, 0]
  for (let k = 0; k < PLACES; k++) {
    const t = (k + 0.5) / PLACES
    const [x, y] = [ax + t * (bx - ax), ay + t * (by - ay)]
    const here = moving.find(
      ({ box, region }) =>
        x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY && inside(region, x, y)
    )
    if (here === undefined) continue
    const across = Math.sin(((degrees - here.grainDeg) * Math.PI) / 180) ** 2
    for (const j of [0, 1, 2] as const)
      sum[j]! += (long / PLACES) * (across * here.across[j] + (1 - across) * here.along[j])
  }
  return [sum[0]!, sum[1]!, sum[2]!]
}
