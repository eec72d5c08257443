import type { PourCast } from '../../../engine/src/cast/cast.ts'
import type { Planned } from '../../../engine/src/plan.ts'
import { RUNAWAY_ABOVE_C } from '../../../engine/src/resin/limits.ts'
import type { CoreModel } from '../../../engine/src/sheets/core-model.ts'
import { capital } from '../../../engine/src/sheets/model.ts'
import { batches, curve, KIND_WORDS, windows } from '../../../engine/src/sheets/page-card.ts'
import type { EdgeView, LayerView } from './views.ts'

/** A pour of the job card: figures, batch table, curve and windows. */
export function layerView({ plan, work }: Planned, model: CoreModel, i: number): LayerView {
  const pour = plan.pours[i]!
  const { night, day } = work.shop.climate
  return {
    index: i,
    name: capital(pour.id),
    kind: KIND_WORDS[work.piece.pours[i]!.kind],
    resin: work.materials.resins[i]!.name,
    castMm: pour.stack.depth,
    levelMm: pour.kind === 'cast' ? pour.stack.level : null,
    finishedMm: pour.finishedMm,
    liquidMl: pour.stack.liquidMl,
    mixedG: pour.batches?.mixedG ?? null,
    peak: peakView(pour.cast),
    batches: batches(plan, work, i, model.shown)?.text ?? '',
    curve: curve(plan, i, model.shown)?.text ?? '',
    windows: windows(plan, i)?.text ?? '',
    edge: edgeView(pour),
    roomC: (night + day) / 2,
    paint: model.pours[i]!.paint
  }
}

/** The peak of a pour as it is shown. */
export function peakView(cast: PourCast | null): LayerView['peak'] {
  if (cast === null) return { kind: 'none' }
  if (cast.runaway) return { kind: 'runaway' }
  const [lowC, high] = cast.peakBandC
  return { kind: 'at', c: cast.peakC, lowC, highC: high > RUNAWAY_ABOVE_C ? null : high }
}

// Depths are given as cast; the search goes by the depth when poured, before it shrinks.
function edgeView({ edge, stack }: Planned['plan']['pours'][number]): EdgeView | null {
  if (edge === null) return null
  const cured = stack.liquidDepth > 0 ? stack.depth / stack.liquidDepth : 1
  const { limitC, over, depthMm, roomK, perMm, perK } = edge
  const castMm = depthMm === null ? null : depthMm * cured
  return { limitC, over, depthMm: castMm, roomK, perMm: perMm / cured, perK }
}
