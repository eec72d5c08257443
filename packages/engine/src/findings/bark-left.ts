import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Bark between timber and resin: the piece parts there. */
export const barkLeft: Check = {
  id: 'bark-left',
  about: 'bark left on under a pour',
  cases: ['C26', 'C27'],
  run
}

function run(work: Work): Found[] {
  if (!work.piece.pours.some(p => p.kind === 'cast')) return []
  return work.entries.timbers.flatMap(({ id, at, value }): Found[] =>
    value.bark
      ? [
          {
            severity: 'stop',
            at: `${at}/bark`,
            says: `${id} still has bark on its sides: the resin holds to the bark, and the bark to nothing; pieces part along it when they leave the mould, or later. Take it off down to sound wood and brush the edge.`,
            basis: 'reports of makers whose boards and tables parted at the bark: common practice',
            settledBy: 'a chisel under the bark: what can be lifted comes off',
            fix: setValue(work.document, `${at}/bark`, false),
            fixSays: `Bark off ${id}`
          }
        ]
      : []
  )
}
