import { shortName } from '../quantity/short-name.ts'
import type { Check, Found } from './finding.ts'
import type { FinishPlace } from './finish-place.ts'
import { endAtGrit, onFaces } from './finish-place.ts'
import type { Work } from './work.ts'

/** A face sanded finer than its coat wants: a film has less to hold to, an oil soaks in less. */
export const gritTooFine: Check = {
  id: 'grit-too-fine',
  about: 'sanding finer than the coat wants',
  cases: ['O10'],
  run: work => onFaces(work, (finish, place) => one(work, finish, place))
}

function one(work: Work, finish: Work['faces'][number], place: FinishPlace): Found[] {
  const { coat, grit } = finish
  if (coat === null || grit === null || grit <= coat.lastGrit[1]) return []
  const [from, to] = coat.lastGrit
  const oil = coat.kind === 'penetrating'
  const given = work.piece.finish[finish.face] ?? work.piece.finish.both
  return [
    {
      severity: oil ? 'note' : 'caution',
      at: `${place.at}/${given?.grits === undefined ? 'grit' : 'grits'}`,
      says: `${place.where} sanded to ${grit} under ${shortName(coat.name)}: ${oil ? 'polished timber takes in less, and colours paler' : 'a coat holds to the scratches of the sanding, and so fine there are few'}. Stop at ${from === to ? to : `${from} to ${to}`}${coat.kind === 'flood' ? ': a coat that levels itself fills those scratches and they vanish' : ''}.`,
      value: grit,
      unit: null,
      limit: to,
      basis: `last grit under this coat ${from} to ${to}: common practice, no source; the tin’s own sheet goes first`,
      settledBy: 'a tape test on an offcut sanded and coated alike',
      fix: endAtGrit(work, place, to),
      fixSays: `Stop at ${to} on ${place.where}`
    }
  ]
}
