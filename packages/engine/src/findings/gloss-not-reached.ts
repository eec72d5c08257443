import { GLOSS_BANDS, rubTo } from '../coat/gloss.ts'
import { decimals } from '../quantity/format.ts'
import { shortName } from '../quantity/short-name.ts'
import type { Check, Found } from './finding.ts'
import type { FinishPlace } from './finish-place.ts'
import { endAtGrit, onFaces } from './finish-place.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** A gloss that the coat, or the last grit on bare resin, does not come to. */
export const glossNotReached: Check = {
  id: 'gloss-not-reached',
  about: 'a gloss that coat or sanding does not reach',
  cases: ['C100'],
  run: work => onFaces(work, (finish, place) => one(work, finish, place))
}

function one(work: Work, { gloss, coat, sanding }: Work['faces'][number], place: FinishPlace): Found[] {
  const { wanted, words, low, high } = gloss
  if (wanted === null || words.includes(wanted)) return []
  const [from, to] = GLOSS_BANDS[wanted]
  const duller = high <= from
  const grit = rubTo(wanted)
  const byRubbing = gloss.by === 'rubbing' && sanding !== null
  const nearest = duller ? words[words.length - 1]! : words[0]!
  const by = byRubbing
    ? `resin sanded to P${sanding.last.grit}`
    : coat === null
      ? 'timber without a film'
      : shortName(coat.name)
  const way = byRubbing
    ? `Sand it to P${grit}${wanted === 'polished' ? ', then polish with pastes of 3 and 1 µm' : ''}.`
    : duller
      ? brighter(wanted)
      : 'Rub the cured film down evenly, or take a coat that is sold duller.'
  return [
    {
      severity: 'caution',
      at: `${place.at}/gloss`,
      says: `${place.where} to be ${wanted}: ${by} comes out ${words.join(' or ')}, ${decimals(low, 0)} to ${decimals(high, 0)} gloss units at 60°, not ${decimals(from, 0)} to ${decimals(to, 0)}.${byRubbing && duller ? ' Scratches finer than the eye shows still make it cloudy.' : ''} ${way}`,
      value: duller ? high : low,
      unit: null,
      limit: duller ? from : to,
      basis:
        'gloss units of ISO 2813 at 60°; bands of the words and what coats reach: common practice, no source; the tin’s own sheet goes first',
      settledBy: 'a coated offcut beside a sample of the gloss wanted',
      ...(byRubbing
        ? { fix: endAtGrit(work, place, grit), fixSays: `Sand to P${grit}` }
        : {
            fix: setValue(work.document, `${place.at}/gloss`, nearest),
            fixSays: `${capital(nearest)} instead`
          })
    }
  ]
}

function capital(word: string): string {
  return word[0]!.toUpperCase() + word.slice(1)
}

function brighter(wanted: string): string {
  return wanted === 'polished'
    ? 'A flood coat, or a film sprayed and polished, gets there.'
    : 'A film of varnish, lacquer or resin gets there.'
}
