import { unlikeBowOf } from '../fits/bow-unlike.ts'
import type { Face } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'
import { shortName } from '../quantity/short-name.ts'
import { otherFace, pourFace } from '../steps/step.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/**
 * Faces of timber finished unlike: one closed to damp, the other open.
 *
 * A face is bare, oiled (open, but slowed) or closed by a film, a flood coat or a flooded pour. The bow is that of the
 * whole piece while the open face has followed the air and the other has not (fits/bow-unlike). Pieces without timber
 * do not cup by damp.
 * Two films alike in kind let damp through in the inverse of their thickness (steady diffusion through a sheet, Fick):
 * one three times as thick as the other is a note.
 *
 * Limits: kinds are compared, and thicknesses only of films of one coat: what a coat lets through is not known here.
 */
export const facesUnlike: Check = {
  id: 'faces-unlike',
  about: 'front and back finished unlike',
  cases: ['O10'],
  run
}

/** Less of a bow than this is not worth a figure, mm. */
const WORTH_MM = 0.1

type Closed = 'bare' | 'oiled' | 'closed'
const ORDER: readonly Closed[] = ['bare', 'oiled', 'closed']

function run(work: Work): Found[] {
  const state = { front: closed(work, 'front'), back: closed(work, 'back') }
  if (work.piece.timbers.length === 0) return []
  if (state.front === state.back) return thinner(work)
  const open: Face = ORDER.indexOf(state.front) < ORDER.indexOf(state.back) ? 'front' : 'back'
  const better = otherFace(open)
  const bow = unlikeBowOf(work, open)
  const told = bow !== null && bow.mm >= WORTH_MM
  return [
    {
      severity: 'caution',
      at: `/finish/${open}`,
      says: `the ${better} has ${words(work, better)}, the ${open} ${words(work, open)}: the more open face takes up and gives off damp faster, and the piece cups${told ? `, by about ${decimals(bow.mm, 1)} mm over its ${decimals(bow.overMm, 0)} mm` : ''}. Finish both faces alike.`,
      value: told ? bow.mm : null,
      unit: told ? 'mm' : null,
      band: told ? bow.bandMm : null,
      basis:
        'common practice of finishing; bow: plate theory with half of the year’s change of moisture between the faces of its timber (judgement), of which creep leaves 0.3 to 1 (common practice)',
      settledBy: 'a straightedge across it after a week in other air',
      ...fixOf(work, open, better)
    }
  ]
}

/** How many times thicker one film may be than the other (judgement). */
const MOST_TIMES = 3

// The same coat on both faces, much thinner on one.
function thinner(work: Work): Found[] {
  const [front, back] = work.faces
  if (front.coat === null || front.coat.kind !== 'film' || front.coat.id !== back.coat?.id) return []
  if (flooded(work, 'front') || flooded(work, 'back')) return []
  const [thin, thick] = front.filmMm[1] <= back.filmMm[1] ? [front, back] : [back, front]
  const times = thick.filmMm[1] / Math.max(1e-6, thin.filmMm[1])
  if (times <= MOST_TIMES + 1e-9) return []
  const coats = Math.min(40, Math.ceil((thin.coats * times) / MOST_TIMES - 1e-9))
  const byCoats = (work.piece.finish[thin.face] ?? work.piece.finish.both)?.film === undefined
  const film = { um: 1000 * thin.filmMm[1], other: 1000 * thick.filmMm[1] }
  return [
    {
      severity: 'note',
      at: `/finish/${thin.face}`,
      says: `the ${thin.face} gets ${decimals(film.um, 0)} µm of ${shortName(front.coat.name)}, the ${thick.face} ${decimals(film.other, 0)}: damp passes the thinner film about ${decimals(times, 0)} times as fast, and the piece cups with the seasons. Finish both faces alike.`,
      value: times,
      unit: null,
      limit: MOST_TIMES,
      basis:
        'steady diffusion through a sheet goes with the inverse of its thickness (Fick, textbook); three times: judgement',
      settledBy: 'a straightedge across it after a week in other air',
      fix: setValue(
        work.document,
        `/finish/${thin.face}${byCoats ? '/coats' : '/film'}`,
        byCoats ? coats : thick.filmMm[1]
      ),
      fixSays: byCoats ? `${coats} coats on the ${thin.face}` : `The same film on the ${thin.face}`
    }
  ]
}

function closed(work: Work, face: Face): Closed {
  if (flooded(work, face)) return 'closed'
  const { coat } = work.faces[face === 'front' ? 0 : 1]
  return coat === null ? 'bare' : coat.kind === 'penetrating' ? 'oiled' : 'closed'
}

function flooded(work: Work, face: Face): boolean {
  return work.piece.pours.some(
    p => p.kind === 'flood' && p.region === undefined && pourFace(p, work.piece) === face
  )
}

function words(work: Work, face: Face): string {
  if (flooded(work, face)) return 'a flooded layer of resin'
  const { coat } = work.faces[face === 'front' ? 0 : 1]
  return coat === null ? 'no finish' : shortName(coat.name)
}

// The open face gets what the other has; under a flood, a thin seal coat closes as well.
function fixOf(work: Work, open: Face, better: Face): Pick<Found, 'fix' | 'fixSays'> {
  const { coat } = work.faces[better === 'front' ? 0 : 1]
  const { finish } = work.document
  if (coat === null || coat.kind === 'flood' || flooded(work, better))
    return {
      fix: setValue(work.document, `/finish/${open}`, { coat: 'epoxy-seal' }),
      fixSays: `Seal the ${open} with a brushed coat of epoxy`
    }
  return {
    fix: setValue(work.document, `/finish/${open}`, finish?.[better] ?? finish?.both ?? { coat: coat.id }),
    fixSays: `${shortName(coat.name)} on the ${open} too`
  }
}
