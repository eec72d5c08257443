import type { Patch } from '../piece/patch.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { typedAt } from './fix.ts'
import type { Work } from './work.ts'

/** Least layer that is one, mm: less does not level by itself (common practice). */
const LEAST_LAYER_MM = 0.5

/** A pour whose level lies hardly above what stands already. One at or under it cannot be used at all: `castPour` says so. */
export const pourBelow: Check = {
  id: 'pour-below',
  about: 'a pour whose level lies hardly above what stands already',
  cases: [],
  run
}

function run(work: Work): Found[] {
  return work.entries.pours.flatMap(({ index, id, at, value }): Found[] => {
    const { floor } = work.stack.pours[index]!
    if (value.kind === 'seal' || value.kind === 'inlay') return []
    if (value.height !== undefined) {
      const over = value.height - floor
      if (over >= LEAST_LAYER_MM - 1e-6) return []
      // Height and depth are easily taken for each other: a level from the mould base up, a layer from its floor up.
      const fix: Patch = [
        { op: 'remove', path: `${at}/height` },
        { op: 'add', path: `${at}/depth`, value: typedAt(work.document, `${at}/height`) }
      ]
      return [
        {
          severity: 'stop',
          at,
          says: `${id} is to come up to ${decimals(value.height, 2)} mm as cast, but what stands already, ${below(work, index)}, comes to ${decimals(floor, 2)}: a layer that thin does not level by itself.`,
          value: value.height,
          unit: 'mm',
          limit: floor + LEAST_LAYER_MM,
          basis:
            'levels as cast, of the pours in their order; half a millimetre is the least that is a layer',
          settledBy: 'the height of what stands, measured',
          fix,
          fixSays: `${id} ${decimals(value.height, 1)} mm deep`
        }
      ]
    }
    if (value.fill !== 'timber' || work.stack.pours[index]!.liquidDepth > 1e-6) return []
    return [
      {
        severity: 'stop',
        at,
        says: `${id} is to fill to the timber, but no timber stands above ${decimals(floor, 2)} mm, where ${below(work, index)} lies: there is nothing to pour.`,
        basis: 'levels as cast, of the pours and timbers in their order'
      }
    ]
  })
}

// What lies under a pour: the pour cast before it.
function below(work: Work, index: number): string {
  const order = work.steps.flatMap(s => (s.kind === 'pour' && s.pour!.value.kind !== 'seal' ? [s.pour!] : []))
  const at = order.findIndex(p => p.index === index)
  return order[at - 1]?.id ?? 'the floor of the mould'
}
