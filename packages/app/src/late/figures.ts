import type * as Outlines from '../../../engine/src/stack/figure-outline.ts'
import type * as Strokes from '../../../engine/src/stack/figure-text.ts'

/** Stands for the shapes of figures in the app: they are loaded for the first piece that has some cut. */
let strokes: typeof Strokes | null = null
let outlines: typeof Outlines | null = null

export async function loadFigures(): Promise<void> {
  if (outlines !== null) return
  const both = await Promise.all([
    import('../../../engine/src/stack/figure-text.ts'),
    import('../../../engine/src/stack/figure-outline.ts')
  ])
  strokes = both[0]
  outlines = both[1]
}

export const textLines: typeof Strokes.textLines = (...of) => {
  if (strokes === null) throw new Error('figures are asked for before they are loaded')
  return strokes.textLines(...of)
}

export const textRegion: typeof Outlines.textRegion = (...of) => {
  if (outlines === null) throw new Error('outlines of figures are asked for before they are loaded')
  return outlines.textRegion(...of)
}
