import type { Check } from '../../../engine/src/findings/finding.ts'
import type * as GlassNear from '../../../engine/src/findings/glass-near.ts'
import type * as HardwareFace from '../../../engine/src/findings/hardware-face.ts'
import type * as HardwareHeat from '../../../engine/src/findings/hardware-heat.ts'
import type * as HardwarePocket from '../../../engine/src/findings/hardware-pocket.ts'
import type * as InsertEdge from '../../../engine/src/findings/insert-edge.ts'
import type * as MainsTrade from '../../../engine/src/findings/mains-trade.ts'
import type * as PilotWrong from '../../../engine/src/findings/pilot-wrong.ts'
import type * as PocketShallow from '../../../engine/src/findings/pocket-shallow.ts'
import type * as ScrewThrough from '../../../engine/src/findings/screw-through.ts'
import type * as SealedIn from '../../../engine/src/findings/sealed-in.ts'
import type * as ThreadShort from '../../../engine/src/findings/thread-short.ts'
import { lateCheck } from './check.ts'

/** Stands for what is asked of parts that are fitted, in the app: it is loaded for the first piece that has some. */
interface Fittings {
  readonly glassNear: typeof GlassNear
  readonly hardwareFace: typeof HardwareFace
  readonly hardwareHeat: typeof HardwareHeat
  readonly hardwarePocket: typeof HardwarePocket
  readonly insertEdge: typeof InsertEdge
  readonly mainsTrade: typeof MainsTrade
  readonly pilotWrong: typeof PilotWrong
  readonly pocketShallow: typeof PocketShallow
  readonly screwThrough: typeof ScrewThrough
  readonly sealedIn: typeof SealedIn
  readonly threadShort: typeof ThreadShort
}
let loaded: Fittings | null = null

export async function loadFittings(): Promise<void> {
  if (loaded !== null) return
  const [
    glassNear,
    hardwareFace,
    hardwareHeat,
    hardwarePocket,
    insertEdge,
    mainsTrade,
    pilotWrong,
    pocketShallow,
    screwThrough,
    sealedIn,
    threadShort
  ] = await Promise.all([
    import('../../../engine/src/findings/glass-near.ts'),
    import('../../../engine/src/findings/hardware-face.ts'),
    import('../../../engine/src/findings/hardware-heat.ts'),
    import('../../../engine/src/findings/hardware-pocket.ts'),
    import('../../../engine/src/findings/insert-edge.ts'),
    import('../../../engine/src/findings/mains-trade.ts'),
    import('../../../engine/src/findings/pilot-wrong.ts'),
    import('../../../engine/src/findings/pocket-shallow.ts'),
    import('../../../engine/src/findings/screw-through.ts'),
    import('../../../engine/src/findings/sealed-in.ts'),
    import('../../../engine/src/findings/thread-short.ts')
  ])
  loaded = {
    glassNear,
    hardwareFace,
    hardwareHeat,
    hardwarePocket,
    insertEdge,
    mainsTrade,
    pilotWrong,
    pocketShallow,
    screwThrough,
    sealedIn,
    threadShort
  }
}

export const glassNear: Check = lateCheck('glass-near', () => loaded?.glassNear.glassNear)
export const hardwareFace: Check = lateCheck('hardware-face', () => loaded?.hardwareFace.hardwareFace)
export const hardwareHeat: Check = lateCheck('hardware-heat', () => loaded?.hardwareHeat.hardwareHeat)
export const hardwarePocket: Check = lateCheck('hardware-pocket', () => loaded?.hardwarePocket.hardwarePocket)
export const insertEdge: Check = lateCheck('insert-edge', () => loaded?.insertEdge.insertEdge)
export const mainsTrade: Check = lateCheck('mains-trade', () => loaded?.mainsTrade.mainsTrade)
export const pilotWrong: Check = lateCheck('pilot-wrong', () => loaded?.pilotWrong.pilotWrong)
export const pocketShallow: Check = lateCheck('pocket-shallow', () => loaded?.pocketShallow.pocketShallow)
export const screwThrough: Check = lateCheck('screw-through', () => loaded?.screwThrough.screwThrough)
export const sealedIn: Check = lateCheck('sealed-in', () => loaded?.sealedIn.sealedIn)
export const threadShort: Check = lateCheck('thread-short', () => loaded?.threadShort.threadShort)
