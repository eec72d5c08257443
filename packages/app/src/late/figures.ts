import type * as Figures from '../../../engine/src/stack/figure-outline.ts'

/** Stands for the outlines of figures in the app: they are loaded for the first piece that has some cut. */
let loaded: typeof Figures | null = null

export async function loadFigures(): Promise<void> {
  loaded ??= await import('../../../engine/src/stack/figure-outline.ts')
}

export const textRegion: typeof Figures.textRegion = (...of) => {
  if (loaded === null) throw new Error('outlines of figures are asked for before they are loaded')
  return loaded.textRegion(...of)
}
