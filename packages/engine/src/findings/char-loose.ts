import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** A charred side under resin that was not brushed out or not sealed. */
export const charLoose: Check = {
  id: 'char-loose',
  about: 'charred timber that is not brushed out and sealed',
  cases: ['C40'],
  run
}

function run(work: Work): Found[] {
  return work.entries.timbers.flatMap(({ id, at, value }): Found[] => {
    const deep = Math.max(value.charred, value.charredTop)
    if (deep <= 0 || (value.brushed && value.sealed !== 'no')) return []
    const todo = [...(value.brushed ? [] : ['brush out']), ...(value.sealed === 'no' ? ['seal'] : [])]
    return [
      {
        severity: 'caution',
        at: value.charred > 0 ? `${at}/charred` : `${at}/charredTop`,
        says: `${id} is charred ${decimals(deep, 1)} mm deep: burnt wood gives off air into the resin, and loose flakes float into it (likely, not certain). Still to do: ${todo.join(' and ')}. Brush, seal coat, then pour.`,
        basis: 'a report of bubbles from charred cracks, remedies not tested by its maker; common practice',
        settledBy: 'an offcut charred alike under a spoonful of this resin',
        fix: [
          ...(value.brushed ? [] : setValue(work.document, `${at}/brushed`, true)),
          ...(value.sealed === 'no' ? setValue(work.document, `${at}/sealed`, 'tacky') : [])
        ],
        fixSays: `${todo.join(' and ').replace(/^./, c => c.toUpperCase())} ${id}`
      }
    ]
  })
}
