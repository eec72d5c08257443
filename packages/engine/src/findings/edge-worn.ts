import type { Met } from '../cuts/run/met.ts'
import { wearOf } from '../cuts/run/wear.ts'
import type { Finding } from './finding.ts'

/** A cutter that is dull before its cuts are done. */
export const EDGE_WORN = { id: 'edge-worn', about: 'a cutter that has cut more than its edges last' } as const

/** What one cutter cuts in one operation. */
export interface CutBy {
  readonly at: string
  /** Id of the cutter and its name. */
  readonly id: string
  readonly cutter: string
  readonly met: readonly Met[]
  /** Way along the work, mm. */
  readonly cutMm: number
}

/** Cutters whose edge is worn before their cuts of the piece are done, each once, where it is through. */
export function wornFindings(cuts: readonly CutBy[]): Finding[] {
  const worn = new Map<string, number>()
  return cuts.flatMap((c): Finding[] => {
    const before = worn.get(c.id) ?? 0
    const { share, says } = wearOf(c.cutMm, c.met)
    worn.set(c.id, before + share)
    if (before >= 1 || before + share < 1) return []
    return [
      {
        id: EDGE_WORN.id,
        severity: 'note',
        at: c.at,
        says: `${c.cutter}: by the end of this cut its edge has done what an edge does${says === null ? '' : `, ${says}`}. Have a second one ready, and take its height anew.`,
        value: Number((before + share).toPrecision(3)),
        unit: null,
        band: null,
        limit: 1,
        basis:
          'way of the paths; how far an edge cuts in timber, resin and filled resin: common practice, no source',
        settledBy: 'the edge under a glass, and the sound of the cut',
        fix: null,
        fixSays: null,
        cases: []
      }
    ]
  })
}
