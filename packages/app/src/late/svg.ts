import type * as Svg from '../../../engine/src/shape/svg.ts'

/** Stands for the engine's reader of drawings in the app: it is loaded for the first piece that names a drawing. */
let loaded: typeof Svg | null = null

export async function loadSvg(): Promise<void> {
  loaded ??= await import('../../../engine/src/shape/svg.ts')
}

export const readSvg: typeof Svg.readSvg = (text, options) => {
  if (loaded === null) throw new Error('a drawing is read before its reader is loaded')
  return loaded.readSvg(text, options)
}
