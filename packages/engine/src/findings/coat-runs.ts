import { decimals } from '../quantity/format.ts'
import { shortName } from '../quantity/short-name.ts'
import type { Check, Found } from './finding.ts'
import type { FinishPlace } from './finish-place.ts'
import { onFaces } from './finish-place.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** A film asked for in so few coats that each is too thick to stand on the edge. */
export const coatRuns: Check = {
  id: 'coat-runs',
  about: 'coats so thick that they run on the edge',
  cases: [],
  run: work => onFaces(work, (finish, place) => one(work, finish, place))
}

/** Most coats that the document takes. */
const MOST_COATS = 40

function one(work: Work, finish: Work['faces'][number], place: FinishPlace): Found[] {
  const { coat, coats, coating } = finish
  const document = work.piece.finish[finish.face] ?? work.piece.finish.both
  if (coat === null || coating?.standsUm == null || document?.film === undefined || coats < 1) return []
  const { standsUm, wetUm } = coating
  const [least, wet] = wetUm
  if (wet <= standsUm + 1e-9) return []
  const enough = Math.min(MOST_COATS, Math.ceil((coats * wet) / standsUm - 1e-9))
  const resin = coat.carrier === 'none'
  return [
    {
      severity: least > standsUm ? 'caution' : 'note',
      at: place.at,
      says: `${place.where}: ${decimals(document.film, 3)} mm dry in ${coats} coat${coats === 1 ? '' : 's'} of ${shortName(coat.name)} is ${decimals(wet, 0)} µm wet each. On an upright edge about ${decimals(standsUm, 0)} µm stand, more runs into drops. Lay ${enough} coats, or the edge by itself and thinner.`,
      value: wet,
      unit: 'µm',
      band: [wetUm[0], wetUm[2]],
      limit: standsUm,
      basis: resin
        ? 'a viscous film on an upright face, ρ·g·h²/(2·η) up to 0.1 mm/s (derived; 0.1 to 0.2 mm by practice)'
        : 'thickest wet film that is laid: common practice, no source; the tin’s own sheet goes first',
      settledBy: 'one coat on an upright offcut',
      ...(enough > coats
        ? { fix: setValue(work.document, `${place.at}/coats`, enough), fixSays: `${enough} coats` }
        : {})
    }
  ]
}
