import type * as Kits from '../../../engine/src/cost/kits.ts'
import type * as Packs from '../../../engine/src/cost/packs.ts'

/** Stands for the choice of packs in the app: it is loaded for the first shop that has packs to choose from. */
let kits: typeof Kits | null = null
let packs: typeof Packs | null = null

export async function loadPacks(): Promise<void> {
  const both = await Promise.all([
    import('../../../engine/src/cost/kits.ts'),
    import('../../../engine/src/cost/packs.ts')
  ])
  kits = both[0]
  packs = both[1]
}

export const cheapestKits: typeof Kits.cheapestKits = (needA, needB, shareA, of) => {
  if (of.length === 0) return { packs: [], lackA: Math.max(0, needA), lackB: Math.max(0, needB) }
  if (kits === null) throw new Error('kits are chosen before their choice is loaded')
  return kits.cheapestKits(needA, needB, shareA, of)
}

export const cheapestPacks: typeof Packs.cheapestPacks = (need, of) => {
  if (packs === null) throw new Error('packs are chosen before their choice is loaded')
  return packs.cheapestPacks(need, of)
}
