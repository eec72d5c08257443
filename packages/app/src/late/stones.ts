import type { Check } from '../../../engine/src/findings/finding.ts'
import type * as Damp from '../../../engine/src/findings/stones-damp.ts'
import type * as Proud from '../../../engine/src/findings/stones-proud.ts'
import type * as Sink from '../../../engine/src/findings/stones-sink.ts'
import { lateCheck } from './check.ts'

/** Stands for what is asked of stones in the app: it is loaded for the first piece that has some. */
interface Stones {
  readonly damp: typeof Damp
  readonly proud: typeof Proud
  readonly sink: typeof Sink
}
let loaded: Stones | null = null

export async function loadStones(): Promise<void> {
  if (loaded !== null) return
  const [damp, proud, sink] = await Promise.all([
    import('../../../engine/src/findings/stones-damp.ts'),
    import('../../../engine/src/findings/stones-proud.ts'),
    import('../../../engine/src/findings/stones-sink.ts')
  ])
  loaded = { damp, proud, sink }
}

export const stonesDamp: Check = lateCheck('stones-damp', () => loaded?.damp.stonesDamp)
export const stonesProud: Check = lateCheck('stones-proud', () => loaded?.proud.stonesProud)
export const stonesSink: Check = lateCheck('stones-sink', () => loaded?.sink.stonesSink)
