import { formatMass } from '../quantity/format.ts'
import { roughMass } from '../quantity/rough.ts'
import type { Check, Found } from './finding.ts'
import { liesWell, movedSupports } from './on-supports.ts'
import type { Work } from './work.ts'

/** From so many times the mass that tips the top alone on, a frame is not trusted to hold it (judgement, no source). */
const FRAME = 2

/**
 * A top that tips off its supports: by itself, or under what may lean on its edge.
 *
 * Limits: the top alone; what it is screwed to weighs as well, which the plan does not know.
 */
export const tipsOver: Check = {
  id: 'tips-over',
  about: 'a top that tips when something leans on its edge',
  cases: [],
  run
}

function run(work: Work): Found[] {
  const { inUse } = work
  const { supports } = work.piece
  if (inUse === null || supports === undefined || inUse.tipsAtG === null) return []
  const { tipsAtG, massG } = inUse
  const alone = tipsAtG < 1
  const leaning = supports.leaning
  if (!alone && leaning < tipsAtG) return []
  const loose = supports.held === 'loose'
  const fix = movedSupports(work, u => liesWell(u, leaning))
  const frame = loose ? '' : ' The mass of the frame helps; it is not known here.'
  return [
    {
      severity: alone && loose ? 'stop' : alone || loose || leaning >= FRAME * tipsAtG ? 'caution' : 'note',
      at: '/supports',
      says: alone
        ? `its middle of mass does not lie between its supports: it tips off them by itself.${frame} Move the supports outward, or under its heavier side.`
        : `${roughMass(tipsAtG)} on its edge tips it, and ${formatMass(leaning)} may lean there; it weighs ${formatMass(massG)} itself.${frame} Move the supports outward.`,
      value: leaning,
      unit: 'g',
      limit: tipsAtG,
      basis: 'moments about the edge of its supports: geometry and densities; standing still',
      settledBy: 'a hand pressed on its edge before anybody leans on it',
      ...(fix === null ? {} : { fix, fixSays: 'Move its supports outward' })
    }
  ]
}
