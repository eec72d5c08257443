import type * as Drying from '../../../engine/src/fits/drying-now.ts'

/** Stands for the drying log of the engine in the app: it is loaded with the first timber that was weighed. */
let loaded: typeof Drying | null = null

export async function loadDrying(): Promise<void> {
  loaded ??= await import('../../../engine/src/fits/drying-now.ts')
}

export const logOf: typeof Drying.logOf = (...of) => {
  const [, id, , readings] = of
  if (!readings.some(r => r.kind === 'weight' && r.timber === id)) return null
  if (loaded === null) throw new Error('weights of a timber are read before their reader is loaded')
  return loaded.logOf(...of)
}

export const readyWords: typeof Drying.readyWords = ready => loaded!.readyWords(ready)
