import type * as Work from '../../../engine/src/cuts/for-machine.ts'
import type { Check } from '../../../engine/src/findings/finding.ts'
import type * as Larger from '../../../engine/src/findings/larger-than-machine.ts'
import type * as Checks from '../../../engine/src/findings/machine-checks.ts'
import { lateCheck } from './check.ts'

/** Stands for what the engine asks of a machine in the app: it is loaded for the first shop that has one. */
let work: typeof Work | null = null
let checks: typeof Checks | null = null
let larger: typeof Larger | null = null

export async function loadMachine(): Promise<void> {
  if (checks !== null) return
  const all = await Promise.all([
    import('../../../engine/src/cuts/for-machine.ts'),
    import('../../../engine/src/findings/machine-checks.ts'),
    import('../../../engine/src/findings/larger-than-machine.ts')
  ])
  work = all[0]
  checks = all[1]
  larger = all[2]
}

export const forMachine: typeof Work.forMachine = input => {
  if (work === null) throw new Error('a machine is asked for before what it asks is loaded')
  return work.forMachine(input)
}

/** Without a machine it is silent. */
export const largerThanMachine: Check = lateCheck('larger-than-machine', () => larger?.largerThanMachine)

export const machineFound: typeof Checks.machineFound = of => {
  // Without a machine and without pins they are silent.
  if (of.shop.machine === undefined && of.piece.pins === undefined) return []
  if (checks === null) throw new Error('cuts by machine are checked before their checks are loaded')
  return checks.machineFound(of)
}
