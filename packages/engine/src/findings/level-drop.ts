import { decimals, formatMm, formatVolume } from '../quantity/format.ts'
import { faceOf } from '../stack/stack.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import { orderIsGiven } from './interval.ts'
import type { Work } from './work.ts'

/**
 * The last pour into the mould was filled level with the timber and falls as it cures, and nothing is taken off
 * that face: the resin ends in a hollow.
 */
export const levelDrop: Check = {
  id: 'level-drop',
  about: 'resin that falls below its timber as it cures, and no flattening to meet it',
  cases: [],
  run
}

/** A fall that a coat hides, mm (judgement). */
const LET_PASS_MM = 0.1

function run(work: Work): Found[] {
  const { stack, entries, piece } = work
  if (
    stack.events.some(
      e => (e.kind === 'trim' || e.kind === 'flood') && (e.kind === 'flood' || e.side === 'high')
    )
  )
    return []
  const last = entries.pours.findLast(p => p.value.kind === 'cast')
  if (last === undefined || last.value.fill === undefined || piece.timbers.length === 0) return []
  const { level, liquidLevel, surfaceMm2 } = stack.pours[last.index]!
  const fall = liquidLevel - level
  if (!(fall > LET_PASS_MM) || !Number.isFinite(fall)) return []
  const face = faceOf(piece, 'high')
  const ml = (fall * surfaceMm2) / 1000
  return [
    {
      severity: 'caution',
      at: last.at,
      says: `${last.id} is filled level with the timber and falls ${formatMm(fall)} as it cures: the ${face} is left hollow there. Top it up with about ${formatVolume(ml)} while it is tacky (a layer line shows), or take ${decimals(rounded(fall, 'up', 0.1), 1)} mm off the ${face}.`,
      value: fall,
      unit: 'mm',
      basis:
        'cure shrinkage of the resin (ISO 3521 sense), all of it in depth before gel and a third after: the least that is to be topped up',
      settledBy: 'a straightedge over the cured pour',
      ...(orderIsGiven(work)
        ? {}
        : {
            fix: setQuantity(work.document, `/flatten/${face}`, 'length', fall, 'up'),
            fixSays: `Take ${decimals(rounded(fall, 'up', 0.1), 1)} mm off the ${face}`
          })
    }
  ]
}
