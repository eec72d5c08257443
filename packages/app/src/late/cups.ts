import type * as Cups from '../../../engine/src/cast/cup-result.ts'

/** Stands for the engine's fit of cup tests in the app: it is loaded for the first shop that holds one. */
let loaded: typeof Cups | null = null

export async function loadCups(): Promise<void> {
  loaded ??= await import('../../../engine/src/cast/cup-result.ts')
}

export const cupResult: typeof Cups.cupResult = (test, record) => {
  if (loaded === null) throw new Error('a cup test is fitted before its fit is loaded')
  return loaded.cupResult(test, record)
}
