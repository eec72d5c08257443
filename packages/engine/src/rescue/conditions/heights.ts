import { formatMm } from '../../quantity/format.ts'
import type { RescueCase, Trouble } from '../condition.ts'

/** How far a level may be off before it is a trouble: least, mm, and share of the depth (practice: a rule, and what a scale and a vessel leave). */
const LEAST_MM = 0.5
const SHARE = 0.03

/** Pours whose measured level is further from the planned one than a level may be. */
export function heightTroubles({ plan, built }: RescueCase, which: 'short' | 'over'): Trouble[] {
  return built.entries.pours.flatMap(({ id, index }): Trouble[] => {
    const read = built.readings.filter(r => r.kind === 'height' && r.pour === id)
    if (read.length === 0) return []
    const { level, depth } = plan.stack.pours[index]!
    const off = built.stack.pours[index]!.level - level
    const may = Math.max(LEAST_MM, SHARE * depth)
    if (Math.abs(off) <= may || off < 0 !== (which === 'short')) return []
    return [
      {
        kind: which === 'short' ? 'height short' : 'height over',
        of: id,
        byMm: Math.round(Math.abs(off) * 100) / 100,
        says: `${id} stands ${formatMm(built.stack.pours[index]!.level)} high as cast; ${formatMm(level)} was planned, and ${formatMm(may)} more or less is let pass`,
        readings: read.map(r => r.id)
      }
    ]
  })
}
