import type * as Work from '../../../engine/src/cuts/for-machine.ts'
import type * as Checks from '../../../engine/src/findings/machine-checks.ts'

/** Stands for what the engine asks of a machine in the app: it is loaded for the first shop that has one. */
let work: typeof Work | null = null
let checks: typeof Checks | null = null

export async function loadMachine(): Promise<void> {
  if (checks !== null) return
  const both = await Promise.all([
    import('../../../engine/src/cuts/for-machine.ts'),
    import('../../../engine/src/findings/machine-checks.ts')
  ])
  work = both[0]
  checks = both[1]
}

export const forMachine: typeof Work.forMachine = input => {
  if (work === null) throw new Error('a machine is asked for before what it asks is loaded')
  return work.forMachine(input)
}

export const machineFound: typeof Checks.machineFound = of => {
  // Without a machine and without pins they are silent.
  if (of.shop.machine === undefined && of.piece.pins === undefined) return []
  if (checks === null) throw new Error('cuts by machine are checked before their checks are loaded')
  return checks.machineFound(of)
}
