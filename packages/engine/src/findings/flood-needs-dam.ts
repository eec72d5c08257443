import type { Flood } from '../finish/flood.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** A flood coat thicker than stands by itself, without a dam. */
export const floodNeedsDam: Check = {
  id: 'flood-needs-dam',
  about: 'a flood coat that runs off for want of a dam',
  cases: [],
  run: work => floodsOf(work).flatMap(f => one(work, f))
}

/** A flood with its place in the document and its name. */
export interface FloodPlace {
  readonly flood: Flood
  readonly at: string
  readonly name: string
}

/** Every flood of a piece that its document tells of: pours, and coats of the finish, those of both faces once. */
export function floodsOf(work: Work): FloodPlace[] {
  const shared = work.piece.finish.front === undefined && work.piece.finish.back === undefined
  return work.faces.flatMap(f =>
    f.floods.flatMap((flood): FloodPlace[] => {
      if (flood.pour !== null) {
        const { id, at } = work.entries.pours[flood.pour]!
        return [{ flood, at, name: id }]
      }
      if (shared && f.face === 'back') return []
      const own = work.piece.finish[f.face] !== undefined
      return [
        {
          flood,
          at: `/finish/${own ? f.face : 'both'}`,
          name: shared ? 'the flood coat of each face' : `the flood coat of the ${f.face}`
        }
      ]
    })
  )
}

function one(work: Work, { flood, at, name }: FloodPlace): Found[] {
  const { wantsDamMm, damMm, depthMm, standsMm } = flood
  if (wantsDamMm === null || damMm !== null) return []
  const [, deep] = depthMm
  return [
    {
      severity: 'caution',
      at,
      says: `${name} is ${decimals(deep, 1)} mm thick when poured. Without a dam resin stands ${decimals(standsMm[0], 1)} to ${decimals(standsMm[2], 1)} mm up to a sharp edge: the rest runs off over it. Dam the edge ${wantsDamMm} mm over the face, or pour it in two.`,
      value: deep,
      unit: 'mm',
      limit: standsMm[1],
      basis:
        'puddle at a sharp edge, 2·a·sin 45° of the capillary length (textbook, memory); surface tension of epoxy 0.035 to 0.045 N/m (memory)',
      settledBy: 'a spoonful on a level offcut: how thick it stands at the edge',
      fix: setValue(work.document, `${at}/dam`, wantsDamMm),
      fixSays: `Dam of ${wantsDamMm} mm`
    }
  ]
}
