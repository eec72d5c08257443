import { cutSize } from '../../fits/cut-size.ts'
import type { Entry } from '../../piece/entry.ts'
import type { Cut } from '../../piece/piece-schema.ts'
import type { RescueCase, Trouble, WayDraft } from '../condition.ts'

/** A size closer to the one wanted than this is let pass, mm: a caliper in a hole (practice). */
const SAME_MM = 0.1

// Cuts measured wider or narrower than they were to be cut.
export function fitTroubles({ built }: RescueCase, which: 'tight' | 'loose'): Trouble[] {
  return built.entries.cuts.flatMap(({ id, index }): Trouble[] => {
    const read = built.readings.flatMap(r => (r.kind === 'size' && r.cut === id ? [r] : []))
    const last = read.at(-1)
    const wanted = cutSize(built, index)?.cutMm ?? null
    if (last === undefined || wanted === null) return []
    const off = last.across - wanted
    if (Math.abs(off) <= SAME_MM || off < 0 !== (which === 'tight')) return []
    return [
      {
        kind: which === 'tight' ? 'fit tight' : 'fit loose',
        of: id,
        byMm: Math.round(Math.abs(off) * 100) / 100,
        says: `${id} measures ${last.across} mm across; ${Math.round(wanted * 100) / 100} mm was to be cut`,
        readings: [last.id]
      }
    ]
  })
}

/** Why a cut has no width to change; null: it has one. */
export function sizeless(cut: Entry<Cut>): string | null {
  return cut.value.shape === undefined && cut.value.width === undefined ? 'it has no width of its own' : null
}

/** What is said where a piece has no cut. */
export function noCut(): WayDraft {
  return {
    id: 'none',
    does: 'Name the cut',
    how: [],
    hazards: [],
    patch: [],
    gives: [],
    handsMin: 0,
    waitDays: 0,
    chance: 'seldom works',
    excluded: 'the piece has no cuts'
  }
}
