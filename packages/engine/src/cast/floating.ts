import { basicGravityOf, density12Of } from '../catalogue/timber.ts'
import type { TimberRecord } from '../catalogue/timber-record.ts'
import { area } from '../shape/measure.ts'
import { loftArea } from '../stack/loft.ts'
import { volumeBetween } from '../stack/solid.ts'
import type { Stack } from '../stack/stack.ts'
import { densityKgM3 } from '../timber/density.ts'
import type { HoldDown } from '../timber/float.ts'
import { holdDown } from '../timber/float.ts'
import type { Materials } from './facts.ts'

/** Whether a timber floats when resin creeps under it, and what holds it. */
export interface Floating {
  readonly timber: number
  readonly massG: number
  readonly densityKgM3: number
  readonly hold: HoldDown
  /** The same while only the first pour that reaches it is liquid: later ones find it set in resin. */
  readonly first: HoldDown
  /** What the maker's hold-down carries, g; null when the document leaves it to the plan. */
  readonly held: number | null
}

/** One entry a timber. The liquid is the pours' own; it may creep under the whole underside. */
export function floatingOf(stack: Stack, materials: Materials, moisturePct: readonly number[]): Floating[] {
  const { piece, geometry } = stack
  return geometry.timbers.map((t, i): Floating => {
    const document = piece.timbers[i]!
    const density = timberDensity(materials.timbers[i]!, moisturePct[i]!)
    const liquid = Math.max(
      900,
      ...materials.resins.map((r, k) => (piece.pours[k]!.kind === 'cast' ? r.densityGMl * 1000 : 0))
    )
    // The side's own three areas: what a crown or a hollow adds or takes is not in them.
    const body = {
      bottomMm: t.base,
      topMm: Math.max(t.base + 0.01, t.high),
      areasMm2: [
        area(t.lower),
        t.lofts === null ? area(t.upper) : t.lofts.reduce((sum, l) => sum + loftArea(l, 0.5), 0),
        area(t.upper)
      ] as const,
      densityKgM3: density,
      liquidKgM3: liquid
    }
    const levels = stack.pours.flatMap((p, k) =>
      piece.pours[k]!.kind === 'cast' && p.liquidLevel > t.base && Number.isFinite(p.liquidLevel)
        ? [p.liquidLevel]
        : []
    )
    const level = Math.max(t.base, ...levels)
    return {
      timber: i,
      massG: (volumeBetween(t, t.base, t.high) * density) / 1e6,
      densityKgM3: density,
      hold: holdDown(body, Math.min(level, 2000)),
      first: holdDown(body, Math.min(levels[0] ?? t.base, 2000)),
      held: document.held === 'nothing' ? 0 : (document.holding ?? null)
    }
  })
}

/** Density of a timber at a moisture, kg/m³: from its basic gravity, else its density at 12 %, else a middling hardwood. */
export function timberDensity(record: TimberRecord, moisturePct: number): number {
  const basic = basicGravityOf(record)
  if (basic !== null) return densityKgM3(basic.value, Math.min(moisturePct, 29.9))
  return density12Of(record)?.value ?? MIDDLING_KG_M3
}

/** Density taken when a row has none: 650 kg/m³ (practice: the middle of common hardwoods, 500 to 800). */
const MIDDLING_KG_M3 = 650
