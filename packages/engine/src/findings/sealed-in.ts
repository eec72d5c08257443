import type { Operation } from '../piece/patch.ts'
import { pourFace } from '../steps/step.ts'
import type { Check, Found } from './finding.ts'
import { removeValue } from './fix.ts'
import type { Work } from './work.ts'

/** A part that wears out or must be reached, closed in by resin. */
export const sealedIn: Check = {
  id: 'sealed-in',
  about: 'a part that must be reached, cast in or covered by a later coat of resin',
  cases: ['C96'],
  run
}

function run(work: Work): Found[] {
  return work.fits.flatMap((fit): Found[] => {
    const { at, id, value } = work.entries.hardware[fit.hardware]!
    if (!fit.record.needsAccess) return []
    const cover = value.castIn === undefined ? coveredBy(work, fit.hardware) : null
    if (value.castIn === undefined && cover === null) return []
    return [
      {
        severity: 'stop',
        at,
        says: `${id} wears out or has to be reached, and ${cover === null ? `it is cast into ${value.castIn}` : `${cover.id} covers it`}: it can never be changed. Give it a pocket or a bay with a lid, and lead the cable out.`,
        basis: 'parts that wear out stay outside the resin: makers’ reports, common practice',
        ...(cover === null
          ? { fix: removeValue(work.document, `${at}/castIn`), fixSays: `${id} not cast in: into a pocket` }
          : cover.fix)
      }
    ]
  })
}

// A flood over its face after it is fitted, and the fix: that flood before it.
function coveredBy(work: Work, hardware: number): { id: string; fix: Pick<Found, 'fix' | 'fixSays'> } | null {
  const { id, value } = work.entries.hardware[hardware]!
  const fitted = work.steps.findIndex(s => s.kind === 'fit' && s.hardware!.index === hardware)
  if (fitted < 0) return null
  for (let k = fitted + 1; k < work.steps.length; k++) {
    const { kind, pour } = work.steps[k]!
    if (kind !== 'pour' || pour!.value.kind !== 'flood') continue
    // One kept to a region by dams may leave it free.
    if (pourFace(pour!.value, work.piece) !== value.face || pour!.value.region !== undefined) continue
    const move: Operation = { op: 'move', from: `/steps/${k}`, path: `/steps/${fitted}` }
    const fix =
      work.piece.steps === undefined ? {} : { fix: [move], fixSays: `${pour!.id} before ${id} is fitted` }
    return { id: pour!.id, fix }
  }
  return null
}
