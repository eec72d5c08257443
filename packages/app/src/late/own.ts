import type * as Pigments from '../../../engine/src/cast/own-pigment.ts'
import type * as Resins from '../../../engine/src/cast/own-resin.ts'
import type * as Label from '../../../engine/src/findings/label-figures.ts'

/** Stands for resins and pigments of a maker's own in the app: they are loaded for the first shop that has some. */
let resins: typeof Resins | null = null
let label: typeof Label | null = null
let pigments: typeof Pigments | null = null

export async function loadResins(): Promise<void> {
  const both = await Promise.all([
    import('../../../engine/src/cast/own-resin.ts'),
    import('../../../engine/src/findings/label-figures.ts')
  ])
  resins = both[0]
  label = both[1]
}

export async function loadPigments(): Promise<void> {
  pigments ??= await import('../../../engine/src/cast/own-pigment.ts')
}

export const ownResin: typeof Resins.ownResin = choice => {
  if (choice.label === null) return choice
  if (resins === null) throw new Error('a resin of the shop is asked for before it is loaded')
  return resins.ownResin(choice)
}

export const labelFigures: typeof Label.labelFigures = {
  id: 'label-figures',
  get about() {
    return label?.labelFigures.about ?? ''
  },
  get cases() {
    return label?.labelFigures.cases ?? []
  },
  run: work => label?.labelFigures.run(work) ?? []
}

export const ownPigments: typeof Pigments.ownPigments = shop => {
  if (shop.cards.length === 0) return record => record
  if (pigments === null) throw new Error('a hiding card is read before its reader is loaded')
  return pigments.ownPigments(shop)
}

// Asked for by what is loaded with them.
export const fitOfLabel: typeof Resins.fitOfLabel = choice => resins!.fitOfLabel(choice)
export const labelBand: typeof Resins.labelBand = (...of) => resins!.labelBand(...of)
