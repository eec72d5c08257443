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
  if (removal.region !== null) {
    const b = bounds(removal.region)
    if (removal.under !== undefined) return around(b, bounds(removal.under.region), 0)
    // Sloping walls are wider above the height they are drawn at.
    return removal.flare === undefined
      ? b
      : around(b, b, halfWidthAt({ kind: 'v', widthMm: 0, angleDeg: removal.flare.angleDeg }, thickMm))
  }
  const b = bounds({ rings: removal.lines! })
  const half = halfWidthAt(removal.profile!, thickMm)
  return { minX: b.minX - half, minY: b.minY - half, maxX: b.maxX + half, maxY: b.maxY + half }
}

function around(a: Bounds, b: Bounds, out: number): Bounds {
  return {
    minX: Math.min(a.minX, b.minX) - out,
    minY: Math.min(a.minY, b.minY) - out,
    maxX: Math.max(a.maxX, b.maxX) + out,
    maxY: Math.max(a.maxY, b.maxY) + out
  }
}
