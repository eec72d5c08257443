import type { Check } from '../../../engine/src/findings/finding.ts'
import type * as Sags from '../../../engine/src/findings/sags-in-use.ts'
import type * as Slots from '../../../engine/src/findings/slots-short.ts'
import type * as Tips from '../../../engine/src/findings/tips-over.ts'
import type * as Use from '../../../engine/src/fits/in-use.ts'
import type * as Loads from '../../../engine/src/fits/loaded-piece.ts'
import type * as Lie from '../../../engine/src/fits/supports.ts'
import { lateCheck } from './check.ts'

/** Stands for what a piece does on its legs or rails in the app: it is loaded for the first piece that has some. */
interface Supports {
  readonly use: typeof Use
  readonly loads: typeof Loads
  readonly lie: typeof Lie
  readonly sags: typeof Sags
  readonly slots: typeof Slots
  readonly tips: typeof Tips
}
let loaded: Supports | null = null

export async function loadSupports(): Promise<void> {
  if (loaded !== null) return
  const [use, loads, lie, sags, slots, tips] = await Promise.all([
    import('../../../engine/src/fits/in-use.ts'),
    import('../../../engine/src/fits/loaded-piece.ts'),
    import('../../../engine/src/fits/supports.ts'),
    import('../../../engine/src/findings/sags-in-use.ts'),
    import('../../../engine/src/findings/slots-short.ts'),
    import('../../../engine/src/findings/tips-over.ts')
  ])
  loaded = { use, loads, lie, sags, slots, tips }
}

function there(): Supports {
  if (loaded === null) throw new Error('legs or rails are asked for before what they ask is loaded')
  return loaded
}

export const inUseOf: typeof Use.inUseOf = (...of) => there().use.inUseOf(...of)
export const loadedPiece: typeof Loads.loadedPiece = of => there().loads.loadedPiece(of)
export const placesOf: typeof Lie.placesOf = of => there().lie.placesOf(of)
export const screwsOf: typeof Lie.screwsOf = of => there().lie.screwsOf(of)
export const linesOf: typeof Lie.linesOf = (...of) => there().lie.linesOf(...of)
export const supportProblems: typeof Lie.supportProblems = (...of) => there().lie.supportProblems(...of)

export const sagsInUse: Check = lateCheck('sags-in-use', () => loaded?.sags.sagsInUse)
export const slotsShort: Check = lateCheck('slots-short', () => loaded?.slots.slotsShort)
export const tipsOver: Check = lateCheck('tips-over', () => loaded?.tips.tipsOver)
