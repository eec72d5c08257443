import { decimals } from '../quantity/format.ts'
import { intersection } from '../shape/combine.ts'
import { area } from '../shape/measure.ts'
import { faceOf } from '../stack/stack.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import { orderIsGiven } from './interval.ts'
import type { Work } from './work.ts'

/** Resin that lies deeper than this under the flattened face is taken to be meant so, a tray say, mm (judgement). */
const MEANT_MM = 5
/** Less is the straightedge's own, mm. */
const SLACK_MM = 0.05
/** Least area of it inside the outline that counts, mm². */
const LEAST_MM2 = 25

/**
 * A face that flattening does not reach everywhere: resin or timber lies lower there and stays hollow.
 *
 * Limits: the face that was up in the mould; resin at its lowest level where regions differ, timber at the
 * lowest place of its top. The face that lay on the base is as flat as the base.
 */
export const faceNotReached: Check = {
  id: 'face-not-reached',
  about: 'flattening that leaves low places of the cast untouched',
  cases: ['C64'],
  run
}

function run(work: Work): Found[] {
  const { stack, piece, entries } = work
  const { outline } = stack.geometry
  const trims = stack.events.flatMap(e => (e.kind === 'trim' && e.side === 'high' ? [e.z] : []))
  const casts = stack.pours.filter((_, i) => piece.pours[i]!.kind === 'cast')
  if (trims.length === 0 || casts.length === 0) return []
  const plane = Math.min(...trims)
  const level = Math.max(...casts.map(p => p.level))
  const top = casts.find(p => p.level === level)!
  const face = faceOf(piece, 'high')
  const out: Found[] = []
  const say = (at: string, what: string, low: number) => {
    const missing = plane - low
    const goal = rounded(piece.flatten[face] + missing, 'up', 0.1)
    out.push({
      severity: 'caution',
      at,
      says: `${what} lies ${decimals(missing, missing < 1 ? 2 : 1)} mm lower than the flattened ${face}: the cutter passes over it and it stays hollow. Take ${decimals(goal, 1)} mm off the ${face} in all, or pour and set that much higher.`,
      value: missing,
      unit: 'mm',
      limit: 0,
      basis:
        'heights of the cast less what flattening and sanding take off: geometry, shrinkage of the resin taken off',
      settledBy: 'the height of the cast at its lowest place',
      ...(orderIsGiven(work)
        ? {}
        : {
            fix: setQuantity(
              work.document,
              `/flatten/${face}`,
              'length',
              piece.flatten[face] + missing,
              'up'
            ),
            fixSays: `Take ${decimals(goal, 1)} mm off the ${face}`
          })
    })
  }
  const missing = plane - level
  if (missing > MEANT_MM && openMm2(work) > LEAST_MM2) {
    const { id, at } = entries.pours[top.index]!
    out.push({
      severity: 'note',
      at,
      says: `the resin of ${id} ends ${decimals(missing, 1)} mm below the flattened ${face}. So deep a hollow is taken to be meant; if it is not, another ${decimals(missing, 1)} mm of resin is wanting.`,
      value: missing,
      unit: 'mm',
      basis:
        'heights of the cast less what flattening and sanding take off: geometry, shrinkage of the resin taken off'
    })
  }
  if (missing > SLACK_MM && missing <= MEANT_MM && openMm2(work) > LEAST_MM2)
    say(entries.pours[top.index]!.at, `the resin of ${entries.pours[top.index]!.id}`, level)
  entries.timbers.forEach(({ index, id, at }) => {
    const t = stack.geometry.timbers[index]!
    const low = Math.max(level, t.low)
    // A timber meant to lie deep in a recess is no fault of the flattening either.
    const short = plane - low
    if (short <= SLACK_MM || short > MEANT_MM || area(intersection(t.upper, outline)) <= LEAST_MM2) return
    say(at, t.low < t.high ? `the lowest place of ${id}` : id, low)
  })
  return out
}

// Area inside the outline that is not timber.
function openMm2(work: Work): number {
  const { outline, timbers } = work.stack.geometry
  return area(outline) - timbers.reduce((sum, t) => sum + area(intersection(t.upper, outline)), 0)
}
