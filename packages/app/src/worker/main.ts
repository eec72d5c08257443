import { InputProblem } from '../../../engine/src/piece/problem.ts'
import { checkPiece, checkShop, usualShop } from '../../../engine/src/piece/read.ts'
import type { Planned } from '../../../engine/src/plan.ts'
import { plan } from '../../../engine/src/plan.ts'
import { roundModel } from '../../../engine/src/round/round-model.ts'
import { coreModelOf } from '../../../engine/src/sheets/model.ts'
import { planView } from '../../../engine/src/sheets/plan-view.ts'
import { toolAnswer } from './changes.ts'
import { drawingParts } from './drawing-parts.ts'
import { fieldTable } from './fields.ts'
import type { Answer, Ask, Thumb } from './messages.ts'
import { drawnOf, plannedView } from './planned-view.ts'

/**
 * The worker that runs the engine. Asks are answered in their order; of plans only the newest waiting one is
 * made, since an older one would never be shown.
 */
const waiting: Ask[] = []
let due = false

addEventListener('message', (event: MessageEvent<Ask>) => {
  const ask = event.data
  if (ask.kind === 'plan') {
    const older = waiting.findIndex(a => a.kind === 'plan')
    if (older >= 0) waiting.splice(older, 1)
  }
  waiting.push(ask)
  soon()
})

// Between two asks the queue is let fill, so that an edit made meanwhile takes the place of the one before.
function soon(): void {
  if (due || waiting.length === 0) return
  due = true
  setTimeout(() => {
    due = false
    // What a maker waits for goes before pictures of other pieces.
    const first = waiting.findIndex(a => a.kind !== 'thumb')
    const [ask] = waiting.splice(Math.max(0, first), 1)
    if (ask !== undefined) postMessage(answered(ask))
    soon()
  })
}

function answered(ask: Ask): Answer {
  const { seq } = ask
  try {
    switch (ask.kind) {
      case 'plan':
        return { kind: 'planned', seq, view: plannedView(planned(ask), ask.width, ask.face, ask.shown) }
      case 'thumb':
        return { kind: 'thumb', seq, thumb: thumb(planned({ ...ask, effort: 'preview' })) }
      case 'round': {
        const { work } = planned({ ...ask, effort: 'preview' })
        return { kind: 'round', seq, model: roundModel(work, coreModelOf(work)) }
      }
      case 'fields':
        return { kind: 'fields', seq, fields: fieldTable() }
      case 'tool':
        return { kind: 'tool', seq, done: toolAnswer(ask.document, ask.files, ask.change) }
      case 'drawing':
        return { kind: 'drawing', seq, parts: drawingParts(ask.text, ask.name) }
    }
  } catch (e) {
    if (e instanceof InputProblem) return { kind: 'refused', seq, problems: e.problems }
    return { kind: 'failed', seq, says: e instanceof Error ? e.message : String(e) }
  }
}

type Asked = Pick<Extract<Ask, { kind: 'plan' }>, 'document' | 'shop' | 'files' | 'asOf' | 'effort'>

function planned({ document, shop, files, asOf, effort }: Asked): Planned {
  const piece = checkPiece(document, 'the piece')
  const usual = shop === null ? usualShop() : checkShop(shop, 'the shop').value
  return plan({ piece, shop: usual, files, source: 'the piece' }, { asOf, effort })
}

/** Size of a picture in the list of pieces, mm on its sheet. */
const THUMB = { widthMm: 62, mostHeightMm: 30 } as const

function thumb({ plan: p, work }: Planned): Thumb {
  const sheet = planView(work, coreModelOf(work), {
    face: 'front',
    path: null,
    sideMm: 1,
    few: true,
    bare: true,
    ...THUMB
  }).sheet
  return { drawn: drawnOf(sheet), verdict: p.verdict, says: p.says, sizeMm: p.totals.sizeMm }
}
