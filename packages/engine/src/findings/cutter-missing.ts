import { chooseCutter } from '../cuts/run/choose.ts'
import type { MachineCut } from '../cuts/run/machine-cut.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setValue, typedAt } from './fix.ts'
import { lineOverCutter } from './line-over-cutter.ts'
import type { Work } from './work.ts'

/** Kinds of cuts whose shape `pocket-closed` looks at. */
const CLOSED = new Set(['pocket', 'slot'])

/** A cut of the machine for which no cutter does. */
export const cutterMissing: Check = {
  id: 'cutter-missing',
  about: 'a cut of the machine without a cutter that fits it and reaches its floor',
  cases: [],
  run: work => work.machineCuts.cuts.flatMap(c => one(work, c))
}

function one(work: Work, cut: MachineCut): Found[] {
  const { choice, at, id } = cut
  const { box } = work.machineCuts
  if ('unknown' in choice)
    return [
      {
        severity: 'caution',
        at: `${at}/cutter`,
        says: `${id} is to be cut with ${choice.unknown}, which is none of the shop's cutters for the machine${box.cutters.some(c => c.own) ? `: ${listed(box.cutters.map(c => c.id))}` : ''}. Leave it out and the largest that fits is taken.`,
        basis: 'the cutters of the shop',
        fix: [{ op: 'remove', path: `${at}/cutter` }],
        fixSays: 'Let the largest that fits be taken'
      }
    ]
  if (!('none' in choice)) return []
  // A V of another angle, or a line wider than its V, is said by the check of lines.
  if (cut.need.kind === 'v' && lineOverCutter.run(work).some(f => f.at === at)) return []
  // A pocket or slot that no cutter goes into is said by the check of its shape.
  const drawn = work.entries.cuts.find(c => c.at === at)?.value
  if (choice.none.reason === 'size' && drawn?.shape !== undefined && CLOSED.has(drawn.kind)) return []
  return [
    {
      severity: 'caution',
      at,
      says: `${id}: ${choice.none.says}${box.says === null ? '' : ` (${box.says})`}.`,
      basis: `${box.says === null ? 'cutters of the shop' : 'usual sizes of the trade'}; plane geometry; cutters as long as the cut is deep, or with a shank no thicker than their edges`,
      ...fixOf(work, cut)
    }
  ]
}

// Of a cutter that is named: any other. A V of another angle where there is one; else somebody else's machine.
function fixOf(work: Work, { need, at, of }: MachineCut): Pick<Found, 'fix' | 'fixSays'> {
  if (of === 'flatten') return {}
  const named = typedAt(work.document, `${at}/cutter`)
  if (named !== undefined && !('none' in chooseCutter(need, work.machineCuts.box.cutters)))
    return {
      fix: [{ op: 'remove', path: `${at}/cutter` }],
      fixSays: 'Let the largest that fits be taken'
    }
  if (need.kind === 'v' && of === 'marking') {
    const angles = work.machineCuts.box.cutters.filter(c => c.shape.form === 'v').map(c => c.shape.angleDeg)
    const near = angles.sort((a, b) => Math.abs(a - need.angleDeg) - Math.abs(b - need.angleDeg))[0]
    if (near !== undefined && Math.abs(near - need.angleDeg) >= 0.5)
      return {
        fix: setValue(work.document, `${at}/angle`, near),
        fixSays: `A V of ${decimals(near, 0)}°`
      }
  }
  return { fix: setValue(work.document, `${at}/way`, 'sent out'), fixSays: 'Send it out' }
}

function listed(ids: readonly string[]): string {
  return ids.length <= 6 ? ids.join(', ') : `${ids.slice(0, 6).join(', ')} …`
}
