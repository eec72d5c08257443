import type { Answer, Ask, Overtaken } from '../worker/messages.ts'
import { isOvertaken } from '../worker/messages.ts'

type Kinds = Exclude<Ask['kind'], 'stop'>
export type Sent = { [K in Kinds]: Omit<Extract<Ask, { kind: K }>, 'seq'> }[Kinds]
type Heard = (answer: Answer) => void

let worker: Worker | null = null
let seq = 0
/** Numbers of the asks made last, of kinds that a newer one overtakes; 0 for none. */
const newest: Record<Overtaken, number> = {
  plan: 0,
  'what-if': 0,
  cup: 0,
  card: 0,
  picture: 0,
  cuts: 0,
  bench: 0,
  rescue: 0,
  days: 0,
  orders: 0,
  buy: 0
}
const heard = new Map<number, Heard>()

// The engine is loaded when it is first asked: the first paint does not wait for it.
function started(): Worker {
  if (worker !== null) return worker
  worker = new Worker(new URL('../worker/main.ts', import.meta.url), { type: 'module' })
  worker.addEventListener('message', (event: MessageEvent<Answer>) => {
    const answer = event.data
    heard.get(answer.seq)?.(answer)
    if (!('share' in answer) || answer.share === 1) heard.delete(answer.seq)
  })
  worker.addEventListener('error', event => {
    const says = event.message || 'the worker stopped'
    for (const [at, tell] of heard) tell({ kind: 'failed', seq: at, says })
    heard.clear()
    worker?.terminate()
    worker = null
  })
  return worker
}

/**
 * Asks the engine in its worker; the number of the ask. A full plan is answered several times, each time better, until
 * its share is 1.
 * Those that a newer one overtook are never answered.
 */
export function askEngine(ask: Sent, tell: Heard): number {
  const at = ++seq
  // One that a newer one overtakes may get no answer, and nobody waits for it any more.
  if (isOvertaken(ask.kind)) {
    heard.delete(newest[ask.kind])
    newest[ask.kind] = at
  }
  heard.set(at, tell)
  started().postMessage({ ...ask, seq: at })
  return at
}

/** Gives up the plan on its way, and the cast that it goes on with. */
export function stopEngine(): void {
  for (const kind of ['plan', 'what-if'] as const) heard.delete(newest[kind])
  worker?.postMessage({ kind: 'stop', seq: ++seq } satisfies Ask)
}

/** The same as a promise, for asks that are always answered. */
export function engineAnswer(ask: Sent): Promise<Answer> {
  return new Promise(done => {
    askEngine(ask, done)
  })
}
