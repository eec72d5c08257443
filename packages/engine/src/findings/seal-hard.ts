import { find } from '../catalogue/find.ts'
import { formatMinutes } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import { intervalMin, orderIsGiven, shorten } from './interval.ts'
import type { Work } from './work.ts'

/** A seal coat that has hardened past its window before the main pour, and is not sanded. */
export const sealHard: Check = {
  id: 'seal-hard',
  about: 'a seal coat gone hard before the main pour',
  cases: ['C27'],
  run: work => [...hard(work), ...late(work)]
}

// Until when a brushed seal coat is tacky, min (catalogue: practice, 3 to 18 h).
const WINDOW_MIN = (find('coat', 'epoxy-seal')?.recoatH[1] ?? 18) * 60

const BASIS =
  'a seal coat is tacky from 3-6 to 18 h after brushing, by its speed: common practice, no source; suppliers and makers do not agree whether to seal at all'

function hard(work: Work): Found[] {
  return work.entries.timbers.flatMap(({ id, at, value }): Found[] =>
    value.sealed === 'hard' && !value.keyed
      ? [
          {
            severity: 'caution',
            at: `${at}/sealed`,
            says: `the seal coat on ${id} is hard: the main pour then lies on old resin and has nothing to soak into. Pour while the coat is tacky, about 6 to 18 h after brushing; once hard, sand it dull all over and wipe.`,
            basis: BASIS,
            settledBy: 'a gloved finger: it takes a print but leaves nothing on the glove',
            fix: setValue(work.document, `${at}/keyed`, true),
            fixSays: `Sand the seal coat of ${id}`
          }
        ]
      : []
  )
}

// A seal of the document's own order, and what is poured on it.
function late(work: Work): Found[] {
  if (!orderIsGiven(work)) return []
  const poured = (kind: 'seal' | 'cast') =>
    work.steps.flatMap((s, k) => (s.kind === 'pour' && s.pour!.value.kind === kind ? [k] : []))
  const pour = poured('cast')[0]
  const seal = poured('seal').findLast(k => pour !== undefined && k < pour)
  const keyed = work.piece.timbers.length > 0 && work.piece.timbers.every(t => t.keyed)
  if (pour === undefined || seal === undefined || keyed) return []
  const wait = intervalMin(work, seal, pour)
  if (wait <= WINDOW_MIN + 1e-6) return []
  const { id } = work.steps[seal]!.pour!
  const next = work.steps[pour]!.pour!
  return [
    {
      severity: 'caution',
      at: next.at,
      says: `${next.id} is poured ${formatMinutes(wait)} after ${id}: a seal coat is tacky until about ${formatMinutes(WINDOW_MIN)}, then it is hard and what is poured on it does not bond by itself. Pour earlier, or sand the coat dull all over and wipe.`,
      value: wait,
      unit: 'min',
      limit: WINDOW_MIN,
      basis: BASIS,
      settledBy: 'a gloved finger: it takes a print but leaves nothing on the glove',
      ...shorten(work, seal, pour, WINDOW_MIN)
    }
  ]
}
