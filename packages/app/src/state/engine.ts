import type { Answer, Ask } from '../worker/messages.ts'

type Sent = { [K in Ask['kind']]: Omit<Extract<Ask, { kind: K }>, 'seq'> }[Ask['kind']]
type Heard = (answer: Answer) => void

let worker: Worker | null = null
let seq = 0
/** Number of the plan asked last; 0 for none. */
let planned = 0
const heard = new Map<number, Heard>()

// The engine is loaded when it is first asked: the first paint does not wait for it.
function started(): Worker {
  if (worker !== null) return worker
  worker = new Worker(new URL('../worker/main.ts', import.meta.url), { type: 'module' })
  worker.addEventListener('message', (event: MessageEvent<Answer>) => {
    const answer = event.data
    heard.get(answer.seq)?.(answer)
    heard.delete(answer.seq)
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

/** Asks the engine in its worker; the number of the ask. Plans that a newer one overtook are never answered. */
export function askEngine(ask: Sent, tell: Heard): number {
  const at = ++seq
  if (ask.kind === 'plan') {
    // One that a newer one overtakes may get no answer, and nobody waits for it any more.
    heard.delete(planned)
    planned = at
  }
  heard.set(at, tell)
  started().postMessage({ ...ask, seq: at })
  return at
}

/** The same as a promise, for asks that are always answered. */
export function engineAnswer(ask: Sent): Promise<Answer> {
  return new Promise(done => {
    askEngine(ask, done)
  })
}
