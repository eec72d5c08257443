import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** A face sanded finer than its coat wants: a film has less to hold to, an oil soaks in less. */
export const gritTooFine: Check = {
  id: 'grit-too-fine',
  about: 'sanding finer than the coat wants',
  cases: ['O10'],
  run: work => work.faces.flatMap(f => one(work, f))
}

function one(work: Work, finish: Work['faces'][number]): Found[] {
  const { face, coat, grit } = finish
  if (coat === null || grit === null || grit <= coat.lastGrit[1]) return []
  const own = work.piece.finish[face] !== undefined
  // What stands under both faces is said once.
  if (!own && face === 'back' && work.piece.finish.front === undefined) return []
  const [from, to] = coat.lastGrit
  const at = `/finish/${own ? face : 'both'}/grit`
  const oil = coat.kind === 'penetrating'
  const where = own
    ? `the ${face}`
    : work.piece.finish.front || work.piece.finish.back
      ? `the ${face}`
      : 'both faces'
  return [
    {
      severity: oil ? 'note' : 'caution',
      at,
      says: `${where} sanded to ${grit} under ${coat.name}: ${oil ? 'polished timber takes in less, and colours paler' : 'a coat holds to the scratches of the sanding, and so fine there are few'}. Stop at ${from === to ? to : `${from} to ${to}`}${coat.kind === 'flood' ? ': a coat that levels itself fills those scratches and they vanish' : ''}.`,
      value: grit,
      unit: null,
      limit: to,
      basis: `last grit under this coat ${from} to ${to}: common practice, no source; the tin’s own sheet goes first`,
      settledBy: 'a tape test on an offcut sanded and coated alike',
      fix: setValue(work.document, at, to),
      fixSays: `Stop at ${to} on ${where}`
    }
  ]
}
