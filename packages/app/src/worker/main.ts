import { InputProblem } from '../../../engine/src/piece/problem.ts'
import type { Planned } from '../../../engine/src/plan.ts'
import { coreModelOf } from '../../../engine/src/sheets/model.ts'
import { planView } from '../../../engine/src/sheets/plan-view.ts'
import { loadAll, loadNeeds } from '../late/needs.ts'
import type { Answer, Ask } from './messages.ts'
import { isOvertaken } from './messages.ts'
import { drawnOf } from './planned-view.ts'
import type { GoingOn } from './planner.ts'
import { columnOf, inputOf, planAnswer, planned } from './planner.ts'
import type { Thumb } from './views.ts'

type Waiting = Exclude<Ask, { kind: 'stop' }>

/**
 * The worker that runs the engine. Asks are answered in their order; of plans only the newest waiting one is
 * made, since an older one would never be shown. A full plan is answered from the column first; then the whole mould
 * is cast in slices, whenever nothing else waits, and each better answer is sent.
 */
const waiting: Waiting[] = []
let due = false
/** What goes on in slices while nothing else waits: what is tried by hand, then the cast of the piece itself. */
let trying: GoingOn | null = null
let goingOn: GoingOn | null = null
/** Programs that are made and proved for the Cuts screen: they go before a cast. */
let proving: GoingOn | null = null
/** The search for another order of the steps: asked for by hand, of the piece as it stands. */
let seeking: GoingOn | null = null

addEventListener('message', (event: MessageEvent<Ask>) => {
  const ask = event.data
  if (isOvertaken(ask.kind)) {
    const older = waiting.findIndex(a => a.kind === ask.kind)
    if (older >= 0) waiting.splice(older, 1)
  }
  // What is cast now is of a piece that is no longer on the desk.
  if (ask.kind === 'plan' || ask.kind === 'stop') goingOn = null
  // The programs of another piece are asked for by themselves; a better plan of the same one changes none.
  if (ask.kind === 'stop' || ask.kind === 'cuts') proving = null
  if (ask.kind === 'plan' || ask.kind === 'stop' || ask.kind === 'what-if') trying = null
  // A plan asked for meanwhile may be of the same piece: the screen forgets what is of another.
  if (ask.kind === 'stop' || ask.kind === 'orders') seeking = null
  if (ask.kind !== 'stop') waiting.push(ask)
  soon()
})

/** Between two slices on a small machine, ms: the window has the other half of it. */
const BREATH_MS = navigator.hardwareConcurrency <= 2 ? 15 : 0

// Between two asks the queue is let fill, so that an edit made meanwhile takes the place of the one before.
function soon(): void {
  const going = goingOn ?? trying ?? proving ?? seeking
  if (due || (waiting.length === 0 && going === null)) return
  due = true
  setTimeout(() => void next(), waiting.length === 0 ? BREATH_MS : 0)
}

async function next(): Promise<void> {
  // What a maker waits for goes before pictures of other pieces, and those before a cast.
  const first = waiting.findIndex(a => a.kind !== 'thumb')
  const [ask] = waiting.splice(Math.max(0, first), 1)
  if (ask !== undefined) postMessage(await answered(ask))
  else await slice(trying ?? seeking ?? proving ?? goingOn)
  if (ask?.kind === 'plan') void fetchLater()
  due = false
  soon()
}

async function slice(on: GoingOn | null): Promise<void> {
  if (on === null) return
  let over = true
  try {
    const { answer, more } = await on.slice()
    over = !more
    if (answer !== null) postMessage(answer)
  } catch (e) {
    postMessage(wrong(on.seq, e))
  }
  if (!over) return
  if (trying === on) trying = null
  if (proving === on) proving = null
  if (seeking === on) seeking = null
  if (goingOn === on) goingOn = null
}

/** What a first plan does without is loaded when it is first asked for, or once the first plan is there. */
const later = {
  fields: () => import('./fields.ts'),
  round: () => import('../../../engine/src/round/round-model.ts'),
  tool: () => import('./changes.ts'),
  drawing: () => import('./drawing-parts.ts'),
  cup: () => import('./cup.ts'),
  card: () => import('./card.ts'),
  picture: () => import('./picture.ts'),
  cuts: () => import('./cuts.ts'),
  bench: () => import('./bench.ts'),
  buy: () => import('./buy.ts'),
  rescue: () => import('../../../engine/src/rescue/rescues.ts'),
  days: () => import('./days.ts'),
  orders: () => import('./orders.ts'),
  trying: () => import('./trying.ts')
}
let fetched = false

// Without a service worker (plain http on the local network) a page that is open must go on without network.
async function fetchLater(): Promise<void> {
  if (fetched) return
  fetched = true
  await Promise.all([loadAll(), ...Object.values(later).map(load => load())]).catch(() => {
    fetched = false
  })
}

async function answered(ask: Waiting): Promise<Answer> {
  const { seq } = ask
  try {
    await loadNeeds(ask)
    switch (ask.kind) {
      case 'plan': {
        const { answer, on } = planAnswer(ask)
        goingOn = on
        return answer
      }
      case 'what-if': {
        const { answer, on } = (await later.trying()).whatIfAnswer(ask)
        trying = on
        return answer
      }
      case 'cuts': {
        const { cutsGoingOn } = await later.cuts()
        proving = cutsGoingOn(seq, columnOf(ask), ask.stops, ask.width)
        return { kind: 'cuts', seq, view: null, share: 0 }
      }
      case 'bench':
        return {
          kind: 'bench',
          seq,
          view: (await later.bench()).benchView(
            planned({ ...ask, effort: 'preview' }),
            columnOf({ ...ask, readings: [] })
          )
        }
      case 'buy': {
        const view = (await later.buy()).buyView(planned({ ...ask, effort: 'preview' }), inputOf(ask))
        return { kind: 'buy', seq, view }
      }
      case 'rescue': {
        const { rescues } = await later.rescue()
        return { kind: 'rescue', seq, rescues: rescues(inputOf(ask), { ...ask.ask, asOf: ask.asOf }) }
      }
      case 'days':
        return { kind: 'days', seq, view: (await later.days()).daysView(ask) }
      case 'orders':
        seeking = (await later.orders()).ordersGoingOn(ask)
        return { kind: 'orders', seq, view: null, share: 0 }
      case 'thumb':
        return { kind: 'thumb', seq, thumb: thumb(planned({ ...ask, effort: 'preview' })) }
      case 'picture': {
        const { pictureOf } = await later.picture()
        return { kind: 'picture', seq, picture: await pictureOf(columnOf(ask), ask.face) }
      }
      case 'round': {
        const { roundModel } = await later.round()
        const { work } = planned({ ...ask, effort: 'preview' })
        return { kind: 'round', seq, model: roundModel(work, coreModelOf(work)) }
      }
      case 'cup':
        return { kind: 'cup', seq, cup: (await later.cup()).cupAnswer(ask) }
      case 'card':
        return { kind: 'card', seq, card: (await later.card()).cardAnswer(ask) }
      case 'fields':
        return { kind: 'fields', seq, fields: (await later.fields()).fieldTable() }
      case 'tool': {
        const { toolAnswer } = await later.tool()
        return { kind: 'tool', seq, done: toolAnswer(ask.document, ask.files, ask.change) }
      }
      case 'drawing':
        return { kind: 'drawing', seq, parts: (await later.drawing()).drawingParts(ask.text, ask.name) }
    }
  } catch (e) {
    return wrong(seq, e)
  }
}

function wrong(seq: number, e: unknown): Answer {
  if (e instanceof InputProblem) return { kind: 'refused', seq, problems: e.problems }
  return { kind: 'failed', seq, says: e instanceof Error ? e.message : String(e) }
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
