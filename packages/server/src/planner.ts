import { Worker } from 'node:worker_threads'
import type { PlanAnswer, PlanAsk } from './plan-thread.ts'
import { ServerProblem } from './problem.ts'

/** A plan that takes longer is given up; a thread without work for so long is ended; so many may wait, ms. */
const MOST_MS = 20_000
const IDLE_MS = 30_000
const MOST_WAITING = 20

type Ask = Omit<PlanAsk, 'number'>

interface Waiting {
  readonly ask: PlanAsk
  readonly done: (text: string) => void
  readonly fail: (e: unknown) => void
}

/** Plans in a thread of its own, one after the other: a piece that never ends ends there, not the server. */
export class Planner {
  private worker: Worker | null = null
  private now: (Waiting & { readonly late: NodeJS.Timeout }) | null = null
  private readonly waiting: Waiting[] = []
  private idle: NodeJS.Timeout | undefined
  private number = 0

  /** @throws ServerProblem 422 for what cannot be used, 503 when too many wait, 504 when it takes too long */
  plan(ask: Ask): Promise<string> {
    if (this.waiting.length >= MOST_WAITING)
      return Promise.reject(
        new ServerProblem(503, 'busy', `${MOST_WAITING} plans are waiting; ask again in a while`)
      )
    return new Promise((done, fail) => {
      this.waiting.push({ ask: { ...ask, number: ++this.number }, done, fail })
      this.next()
    })
  }

  close(): void {
    clearTimeout(this.idle)
    if (this.now !== null) clearTimeout(this.now.late)
    void this.worker?.terminate()
    this.worker = null
  }

  private next(): void {
    if (this.now !== null) return
    const first = this.waiting.shift()
    clearTimeout(this.idle)
    if (first === undefined) {
      this.idle = setTimeout(() => this.close(), IDLE_MS)
      this.idle.unref()
      return
    }
    const late = setTimeout(
      () =>
        this.lost(
          new ServerProblem(504, 'too-long', `the plan took more than ${MOST_MS / 1000} s and was given up`)
        ),
      MOST_MS
    )
    this.now = { ...first, late }
    this.thread().postMessage(first.ask)
  }

  private thread(): Worker {
    if (this.worker !== null) return this.worker
    // From its sources (in tests) the thread is the built one: Node reads no TypeScript.
    const file = import.meta.url.endsWith('.ts') ? '../dist/src/plan-thread.js' : './plan-thread.js'
    const worker = new Worker(new URL(file, import.meta.url), {
      execArgv: [],
      resourceLimits: { maxOldGenerationSizeMb: 700 }
    })
    worker.unref()
    worker.on('message', (answer: PlanAnswer) => {
      const asked = this.now
      if (asked === null || answer.number !== asked.ask.number) return
      clearTimeout(asked.late)
      this.now = null
      if (answer.kind === 'text') asked.done(answer.text)
      else
        asked.fail(
          new ServerProblem(
            answer.code === 'stop-stands' ? 409 : answer.code === 'bug' ? 500 : 422,
            answer.code,
            answer.says
          )
        )
      this.next()
    })
    worker.on('error', () => this.lost(new ServerProblem(500, 'bug', 'the plan ended in a fault of its own')))
    this.worker = worker
    return worker
  }

  private lost(e: ServerProblem): void {
    const asked = this.now
    this.now = null
    void this.worker?.terminate()
    this.worker = null
    if (asked !== null) {
      clearTimeout(asked.late)
      asked.fail(e)
    }
    this.next()
  }
}
