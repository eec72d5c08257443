import { bounds } from '../../shape/measure.ts'
import type { Bounds } from '../../shape/region.ts'
import type { Removal, StackEvent } from '../../stack/event.ts'
import { halfWidthAt } from '../../stack/groove.ts'

/**
 * Boxes of the plan outside of which some events change nothing, mm; null where one of them works on a whole face.
 * `thickMm`: nothing reaches deeper.
 */
export function wantedBoxes(events: readonly StackEvent[], thickMm: number): Bounds[] | null {
  const out: Bounds[] = []
  for (const e of events) {
    if (e.kind !== 'cut' && e.kind !== 'mark') return null
    out.push(boxOf(e.removal, thickMm))
  }
  return out
}

function boxOf(removal: Removal, thickMm: number): Bounds {
  if (removal.region !== null) return bounds(removal.region)
  const b = bounds({ rings: removal.lines! })
  const half = halfWidthAt(removal.profile!, thickMm)
  return { minX: b.minX - half, minY: b.minY - half, maxX: b.maxX + half, maxY: b.maxY + half }
}
