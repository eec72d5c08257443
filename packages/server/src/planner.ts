import { Worker } from 'node:worker_threads'
import type { PlanAnswer, PlanAsk } from './plan-thread.ts'
import { ServerProblem } from './problem.ts'

/** What a planner allows itself. */
export interface PlannerLimits {
  /** A plan that takes longer is given up, ms. */
  readonly mostMs: number
  /** A thread without work for so long is ended, and gives its memory back, ms. */
  readonly idleMs: number
  /** So many may wait behind the one that is made. */
  readonly mostWaiting: number
}

const LIMITS: PlannerLimits = { mostMs: 60_000, idleMs: 30_000, mostWaiting: 20 }

type Ask = Omit<PlanAsk, 'number'>

interface Waiting {
  readonly ask: PlanAsk
  readonly done: (made: string | Uint8Array) => void
  readonly fail: (e: unknown) => void
}

/** Plans in a thread of its own, one after the other: a piece that never ends ends there, not the server. */
export class Planner {
  private worker: Worker | null = null
  private now: (Waiting & { readonly late: NodeJS.Timeout }) | null = null
  private readonly waiting: Waiting[] = []
  private idle: NodeJS.Timeout | undefined
  private number = 0
  private ended = false
  private readonly limits: PlannerLimits

  constructor(limits: PlannerLimits = LIMITS) {
    this.limits = limits
  }

  /** Whether a thread stands ready or plans. */
  get awake(): boolean {
    return this.worker !== null
  }

  /** @throws ServerProblem 422 for what cannot be used, 503 when too many wait, 504 when it takes too long */
  plan(ask: Ask): Promise<string | Uint8Array> {
    if (this.ended) return Promise.reject(closing())
    if (this.waiting.length >= this.limits.mostWaiting)
      return Promise.reject(
        new ServerProblem(503, 'busy', `${this.limits.mostWaiting} plans are waiting; ask again in a while`)
      )
    return new Promise((done, fail) => {
      this.waiting.push({ ask: { ...ask, number: ++this.number }, done, fail })
      this.next()
    })
  }

  /** Ends the thread; whoever still waits is told, so that closing waits for no plan. */
  close(): void {
    this.ended = true
    clearTimeout(this.idle)
    this.rest()
    const asked = [...(this.now === null ? [] : [this.now]), ...this.waiting.splice(0)]
    if (this.now !== null) clearTimeout(this.now.late)
    this.now = null
    for (const { fail } of asked) fail(closing())
  }

  private rest(): void {
    void this.worker?.terminate()
    this.worker = null
  }

  private next(): void {
    if (this.now !== null) return
    const first = this.waiting.shift()
    clearTimeout(this.idle)
    if (first === undefined) {
      this.idle = setTimeout(() => this.rest(), this.limits.idleMs)
      this.idle.unref()
      return
    }
    const late = setTimeout(
      () =>
        this.lost(
          new ServerProblem(
            504,
            'too-long',
            `the plan took more than ${this.limits.mostMs / 1000} s and was given up`
          )
        ),
      this.limits.mostMs
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
      // Room for the new is kept once it was used: little of it makes a plan hardly slower and the server 25 MB smaller.
      resourceLimits: { maxOldGenerationSizeMb: 700, maxYoungGenerationSizeMb: 8 }
    })
    worker.unref()
    worker.on('message', (answer: PlanAnswer) => {
      const asked = this.now
      if (asked === null || answer.number !== asked.ask.number) return
      clearTimeout(asked.late)
      this.now = null
      if (answer.kind === 'made') asked.done(answer.made)
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
    this.rest()
    if (asked !== null) {
      clearTimeout(asked.late)
      asked.fail(e)
    }
    this.next()
  }
}

const closing = () => new ServerProblem(503, 'closing', 'the server is closing: ask again when it is back')
