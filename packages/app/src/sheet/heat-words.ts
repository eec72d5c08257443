import { peakAt } from '../../../engine/src/cast/whole/whole-cast.ts'
import { degreesIn } from '../../../engine/src/quantity/shown-units.ts'
import { units } from '../state/preferences.ts'
import { w } from '../text/words.ts'
import type { HeatView, PlannedView } from '../worker/views.ts'
import { heatZ } from './place.ts'

/** How warm it gets at a place of the plan, for those who listen; '' where no cast is. */
export function heatSays(view: PlannedView, x: number, y: number): string {
  const { heat } = view
  return heat === null ? '' : `${w.heat.of}: ${hereWords(peakAt(heat.map, x, y, heightOf(view, heat)))}.`
}

/** The height shown: the one chosen, else where it is hottest, mm as cast. */
export function heightOf({ model }: PlannedView, { hottest }: HeatView): number {
  const warmest = hottest.reduce<number | null>(
    (best, h, i) => (best === null || h.c > hottest[best]!.c ? i : best),
    null
  )
  const z = heatZ.value ?? (warmest === null ? 0 : hottest[warmest]!.at[2])
  return Math.min(model.castHeight, Math.max(0, z))
}

/** The highest temperature at a place in words. */
export function hereWords(c: number): string {
  return Number.isNaN(c) ? w.heat.notHere : w.heat.here(degrees(c))
}

/** A temperature in the unit shown. */
export function degrees(c: number): string {
  return `${degreesIn(units.value, c)} ${units.value.temperature}`
}
