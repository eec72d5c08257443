import type * as Kits from '../../../engine/src/cost/kits.ts'
import type * as Lots from '../../../engine/src/cost/mix-lots.ts'
import type * as Packs from '../../../engine/src/cost/packs.ts'

/** Stands for the choice of packs in the app: with the lots of a mix, it is loaded for the first shop that has packs to choose from. */
let kits: typeof Kits | null = null
let packs: typeof Packs | null = null
let lots: typeof Lots | null = null

export async function loadPacks(): Promise<void> {
  const all = await Promise.all([
    import('../../../engine/src/cost/kits.ts'),
    import('../../../engine/src/cost/packs.ts'),
    import('../../../engine/src/cost/mix-lots.ts')
  ])
  kits = all[0]
  packs = all[1]
  lots = all[2]
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

// A shop without resins and prices has no lots.
export const mixLots: typeof Lots.mixLots = (needs, shop, into) => lots?.mixLots(needs, shop, into) ?? null
