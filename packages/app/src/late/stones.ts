import type * as Meets from '../../../engine/src/findings/cut-meets-stones.ts'
import type { Check } from '../../../engine/src/findings/finding.ts'
import type * as Damp from '../../../engine/src/findings/stones-damp.ts'
import type * as Large from '../../../engine/src/findings/stones-large.ts'
import type * as Proud from '../../../engine/src/findings/stones-proud.ts'
import type * as Sink from '../../../engine/src/findings/stones-sink.ts'
import { lateCheck } from './check.ts'

/** Stands for what is asked of stones in the app: it is loaded for the first piece that has some. */
interface Stones {
  readonly meets: typeof Meets
  readonly damp: typeof Damp
  readonly large: typeof Large
  readonly proud: typeof Proud
  readonly sink: typeof Sink
}
let loaded: Stones | null = null

export async function loadStones(): Promise<void> {
  if (loaded !== null) return
  const [meets, damp, large, proud, sink] = await Promise.all([
    import('../../../engine/src/findings/cut-meets-stones.ts'),
    import('../../../engine/src/findings/stones-damp.ts'),
    import('../../../engine/src/findings/stones-large.ts'),
    import('../../../engine/src/findings/stones-proud.ts'),
    import('../../../engine/src/findings/stones-sink.ts')
  ])
  loaded = { meets, damp, large, proud, sink }
}

export const cutMeetsStones: Check = lateCheck('cut-meets-stones', () => loaded?.meets.cutMeetsStones)
export const stonesLarge: Check = lateCheck('stones-large', () => loaded?.large.stonesLarge)
/** Asked only by what is loaded with it. */
export const tooLarge: typeof Large.tooLarge = (...given) => loaded?.large.tooLarge(...given) ?? false
export const stonesDamp: Check = lateCheck('stones-damp', () => loaded?.damp.stonesDamp)
export const stonesProud: Check = lateCheck('stones-proud', () => loaded?.proud.stonesProud)
export const stonesSink: Check = lateCheck('stones-sink', () => loaded?.sink.stonesSink)
