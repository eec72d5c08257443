import { GRADES } from '../coat/grain.ts'
import { hiddenUm, scratchUm } from '../coat/scratch.ts'
import { showsScratches } from '../finish/gloss.ts'
import { decimals } from '../quantity/format.ts'
import { shortName } from '../quantity/short-name.ts'
import type { Check, Found } from './finding.ts'
import type { FinishPlace } from './finish-place.ts'
import { endAtGrit, onFaces } from './finish-place.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Scratches of the last grit in resin that a bright film is too thin to hide. */
export const scratchShows: Check = {
  id: 'scratch-shows',
  about: 'scratches of the last grit that show through a bright film',
  cases: ['C100'],
  run: work => onFaces(work, (finish, place) => one(work, finish, place))
}

function one(work: Work, finish: Work['faces'][number], place: FinishPlace): Found[] {
  const { coat, coats, sanding, gloss, filmMm } = finish
  if (coat === null || sanding?.resinScratchUm == null || gloss.by === 'rubbing') return []
  // What does not come out bright is another finding's; a dull face hides what a bright one shows.
  if (!showsScratches(gloss)) return []
  const [low, middle, high] = sanding.resinScratchUm
  const hides = hiddenUm(1000 * filmMm[1])
  const hidesLeast = hiddenUm(1000 * filmMm[0])
  const surely = middle > hides
  if (!surely && high <= hidesLeast) return []
  const clear = (grainUm: number) =>
    surely ? scratchUm(grainUm, 'resin')[1] <= hides : scratchUm(grainUm, 'resin')[2] <= hidesLeast
  const finer = GRADES.find(g => g.grit > sanding.last.grit && clear(g.grainUm))
  const byGrit = finer !== undefined && finer.grit <= coat.lastGrit[1]
  const needs = surely ? middle / hides : high / hidesLeast
  const more = Math.min(40, Math.ceil(coats * needs - 1e-9))
  return [
    {
      severity: surely ? 'caution' : 'note',
      at: place.at,
      says: `${place.where}: P${sanding.last.grit} leaves scratches ${decimals(low, 0)} to ${decimals(high, 0)} µm deep in the resin, and ${coats} coat${coats === 1 ? '' : 's'} of ${shortName(coat.name)} hide${coats === 1 ? 's' : ''} about ${decimals(hides, 0)} µm: under a bright film they ${surely ? 'show' : 'may show'}. ${byGrit ? `Sand on to P${finer.grit}.` : `Lay ${more} coats.`}`,
      value: middle,
      unit: 'µm',
      band: [low, high],
      limit: hides,
      basis:
        'scratch 0.10 to 0.15 of the grain in hard resin; a film hides a third of its thickness: common practice, no source; grain of FEPA (read)',
      settledBy: 'an offcut sanded and coated alike, in raking light',
      ...(byGrit
        ? { fix: endAtGrit(work, place, finer.grit), fixSays: `Sand to P${finer.grit}` }
        : more > coats
          ? { fix: setValue(work.document, `${place.at}/coats`, more), fixSays: `${more} coats` }
          : {})
    }
  ]
}
