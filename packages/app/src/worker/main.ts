import type { WholeCast } from '../../../engine/src/cast/whole/whole-cast.ts'
import { InputProblem } from '../../../engine/src/piece/problem.ts'
import { checkPiece, checkShop, usualShop } from '../../../engine/src/piece/read.ts'
import type { Planned } from '../../../engine/src/plan.ts'
import { plan } from '../../../engine/src/plan.ts'
import { roundModel } from '../../../engine/src/round/round-model.ts'
import { coreModelOf } from '../../../engine/src/sheets/model.ts'
import { planView } from '../../../engine/src/sheets/plan-view.ts'
import type { PlanInput } from '../../../engine/src/work.ts'
import type { Casting } from './casting.ts'
import { casting, keepCast, keptCast } from './casting.ts'
import { toolAnswer } from './changes.ts'
import { drawingParts } from './drawing-parts.ts'
import { fieldTable } from './fields.ts'
import type { Answer, Ask, SentView, Thumb } from './messages.ts'
import { drawnOf, plannedView } from './planned-view.ts'

type Waiting = Exclude<Ask, { kind: 'stop' }>

/**
 * The worker that runs the engine. Asks are answered in their order; of plans only the newest waiting one is
 * made, since an older one would never be shown. A full plan is answered from the column first; then the whole mould
 * is cast in slices, whenever nothing else waits, and each better answer is sent.
 */
const waiting: Waiting[] = []
let due = false
let goingOn: (() => Casting | null) | null = null

addEventListener('message', (event: MessageEvent<Ask>) => {
  const ask = event.data
  if (ask.kind === 'plan') {
    const older = waiting.findIndex(a => a.kind === ask.kind)
    if (older >= 0) waiting.splice(older, 1)
  }
  // What is cast now is of a piece that is no longer on the desk.
  if (ask.kind === 'plan' || ask.kind === 'stop') goingOn = null
  if (ask.kind !== 'stop') waiting.push(ask)
  soon()
})

/** Between two slices on a small machine, ms: the window has the other half of it. */
const BREATH_MS = navigator.hardwareConcurrency <= 2 ? 15 : 0

// Between two asks the queue is let fill, so that an edit made meanwhile takes the place of the one before.
function soon(): void {
  if (due || (waiting.length === 0 && goingOn === null)) return
  due = true
  setTimeout(
    () => {
      due = false
      // What a maker waits for goes before pictures of other pieces, and those before a cast.
      const first = waiting.findIndex(a => a.kind !== 'thumb')
      const [ask] = waiting.splice(Math.max(0, first), 1)
      if (ask !== undefined) postMessage(answered(ask))
      else if (goingOn !== null && goingOn() === null) goingOn = null
      soon()
    },
    waiting.length === 0 ? BREATH_MS : 0
  )
}

/** How often it is told how far a cast is, ms. */
const TOLD_EVERY_MS = 200

type Full = Extract<Ask, { kind: 'plan' }>

/** Goes on casting for a full plan: a slice each time it is called, until it gives null. */
function castingFor(ask: Full, key: string): () => Casting | null {
  let at: Casting | null = null
  let shown: WholeCast | null = null
  let told = 0
  return () => {
    try {
      at ??= casting(ask.seq, inputOf(ask), { effort: 'full' })
      at.slice()
      const share = at.share()
      const best = at.best()
      if (best !== null && best !== shown) {
        shown = best
        told = performance.now()
        if (share === 1) keepCast(key, best)
        postMessage({ kind: 'planned', seq: ask.seq, view: viewOf(ask, best), share } satisfies Answer)
      } else if (share === 1 || performance.now() - told > TOLD_EVERY_MS) {
        told = performance.now()
        if (share === 1 && best !== null) keepCast(key, best)
        postMessage({ kind: 'casting', seq: ask.seq, share } satisfies Answer)
      }
      return share === 1 ? null : at
    } catch (e) {
      postMessage(wrong(ask.seq, e))
      return null
    }
  }
}

function answered(ask: Waiting): Answer {
  const { seq } = ask
  try {
    switch (ask.kind) {
      case 'plan': {
        const key = keyOf(ask)
        const whole = keptCast(key)
        if (whole !== null)
          return { kind: 'planned', seq, view: viewOf({ ...ask, effort: 'full' }, whole), share: 1 }
        const view = viewOf(ask, null)
        if (ask.effort === 'full') goingOn = castingFor(ask, key)
        return { kind: 'planned', seq, view, share: 0 }
      }
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
    return wrong(seq, e)
  }
}

function wrong(seq: number, e: unknown): Answer {
  if (e instanceof InputProblem) return { kind: 'refused', seq, problems: e.problems }
  return { kind: 'failed', seq, says: e instanceof Error ? e.message : String(e) }
}

type Asked = Pick<Full, 'document' | 'shop' | 'files' | 'asOf' | 'effort'>

// What a cast depends on; the face shown and the units are none of it.
function keyOf({ document, shop, files }: Asked): string {
  return JSON.stringify([document, shop, files])
}

function inputOf({ document, shop, files }: Asked): PlanInput {
  const piece = checkPiece(document, 'the piece')
  const usual = shop === null ? usualShop() : checkShop(shop, 'the shop').value
  return { piece, shop: usual, files, source: 'the piece' }
}

function planned(ask: Asked, whole: WholeCast | null = null): Planned {
  const { asOf, effort } = ask
  return plan({ ...inputOf(ask), whole }, { asOf, effort })
}

function viewOf(ask: Full, whole: WholeCast | null): SentView {
  return plannedView(planned(ask, whole), ask.width, ask.face, ask.shown)
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
