import type { Arc, Network } from './network.ts'

/** Earliest and latest starts and ends, and the orders that have been settled. */
export interface Bounds {
  /** Earliest of start 2i and end 2i+1. */
  readonly lo: Float64Array
  readonly hi: Float64Array
  /** Orders settled, newest first: task `first` ends before `then` starts. */
  readonly orders: Order | null
}

export interface Order {
  readonly first: number
  readonly then: number
  readonly before: Order | null
  /** How many orders it and those before it are. */
  readonly depth: number
}

const EPS = 1e-6
/** Bounds looked at in a node, of each task: seldom more in calendars of pieces (measured). */
const USUAL_WORK = 20
// Two thousand years of minutes: beyond any calendar.
const FAR = 1e9

/** Spreads raised and lowered bounds through one network; null: no calendar under these bounds. */
export class Spread {
  readonly net: Network
  readonly #orderOut: Arc[][]
  readonly #orderIn: Arc[][]
  readonly #queue: number[] = []
  readonly #queued: Uint8Array
  readonly #raised: Int32Array
  // What may have closed a loop: nothing, everything, or the order just added; null once it is settled.
  #doubt: Order | 'root' | null = null

  #work = 0

  /**
   * Work done so far, in nodes of the usual kind: where bounds creep from opening to opening a node counts for many. All
   * searches are bounded by it, so that a large calendar ends as a small one does, and the same on every machine.
   */
  get work(): number {
    return this.#work / (USUAL_WORK * this.net.count)
  }

  constructor(net: Network) {
    this.net = net
    this.#orderOut = Array.from({ length: net.count }, () => [])
    this.#orderIn = Array.from({ length: net.count }, () => [])
    this.#queued = new Uint8Array(2 * net.count)
    this.#raised = new Int32Array(2 * net.count)
  }

  /** Bounds of the whole network, every end at `lastMin` or before; null when there is no calendar. */
  root(lastMin: number): Bounds | null {
    const { net } = this
    const n = net.count
    const b: Bounds = {
      lo: new Float64Array(2 * n).fill(Number.NEGATIVE_INFINITY),
      hi: new Float64Array(2 * n).fill(Number.POSITIVE_INFINITY),
      orders: null
    }
    this.#load(null)
    this.#doubt = 'root'
    for (let i = 0; i < n; i++) {
      const fix = net.fixed[i]
      if (fix !== null && fix !== undefined) {
        b.lo[2 * i] = b.hi[2 * i] = fix[0]
        b.lo[2 * i + 1] = b.hi[2 * i + 1] = fix[1]
        if (fix[1] > net.byMin[i]! + EPS) return null
        this.#push(2 * i)
        this.#push(2 * i + 1)
      }
    }
    for (let i = 0; i < n; i++)
      if (net.fixed[i] === null)
        if (!this.#raise(b, 2 * i, Math.max(net.fromMin[i]!, -FAR))) return this.#drop()
    if (!this.#up(b)) return null
    for (let i = 0; i < n; i++) {
      if (net.fixed[i] !== null) {
        this.#push(2 * i)
        this.#push(2 * i + 1)
      } else if (!this.#lower(b, 2 * i + 1, Math.min(net.byMin[i]!, lastMin, FAR))) return this.#drop()
    }
    return this.#down(b) ? b : null
  }

  /** The same with one order more. */
  ordered(from: Bounds, first: number, then: number): Bounds | null {
    return this.orderedAll(from, [[first, then]])
  }

  /** The same with several orders more. */
  orderedAll(from: Bounds, pairs: readonly (readonly [first: number, then: number])[]): Bounds | null {
    let orders = from.orders
    for (const [first, then] of pairs)
      orders = { first, then, before: orders, depth: (orders?.depth ?? 0) + 1 }
    const b: Bounds = { lo: from.lo.slice(), hi: from.hi.slice(), orders }
    this.#load(orders)
    this.#doubt = pairs.length === 1 ? orders : 'root'
    for (const [first, then] of pairs)
      if (!this.#raise(b, 2 * then, b.lo[2 * first + 1]!)) return this.#drop()
    if (!this.#up(b)) return null
    for (const [first, then] of pairs)
      if (!this.#lower(b, 2 * first + 1, b.hi[2 * then]!)) return this.#drop()
    return this.#down(b) ? b : null
  }

  /** The same with starts raised and every end of a task at `ends[task]` or before. */
  narrowed(
    from: Bounds,
    starts: readonly (readonly [task: number, atMin: number])[],
    ends: ((task: number) => number) | null
  ): Bounds | null {
    const b: Bounds = { lo: from.lo.slice(), hi: from.hi.slice(), orders: from.orders }
    this.#load(b.orders)
    this.#doubt = null
    for (const [task, at] of starts) if (!this.#raise(b, 2 * task, at)) return this.#drop()
    if (!this.#up(b)) return null
    if (ends !== null)
      for (let i = 0; i < this.net.count; i++)
        if (this.net.fixed[i] === null && !this.#lower(b, 2 * i + 1, ends(i))) return this.#drop()
    return this.#down(b) ? b : null
  }

  #loaded: Order | null = null
  // Neighbouring nodes of a search share all but their last orders: only those are swapped.
  #load(orders: Order | null): void {
    const add: Order[] = []
    let a = this.#loaded
    let b = orders
    while (a !== b) {
      if (b === null || (a !== null && a.depth >= b.depth)) {
        this.#orderOut[a!.first]!.pop()
        this.#orderIn[a!.then]!.pop()
        a = a!.before
      } else {
        add.push(b)
        b = b.before
      }
    }
    for (const o of add.reverse()) {
      this.#orderOut[o.first]!.push({ to: 2 * o.then, w: 0, gap: -1 })
      this.#orderIn[o.then]!.push({ to: 2 * o.first + 1, w: 0, gap: -1 })
    }
    this.#loaded = orders
  }

  #push(node: number): void {
    if (this.#queued[node] === 1) return
    this.#queued[node] = 1
    this.#queue.push(node)
  }
  #drop(): null {
    for (const node of this.#queue) this.#queued[node] = 0
    this.#queue.length = 0
    return null
  }
  #fail(): boolean {
    this.#drop()
    return false
  }

  #raise(b: Bounds, node: number, to: number): boolean {
    if (to <= b.lo[node]! + EPS) return true
    const { net } = this
    const i = node >> 1
    if (net.fixed[i] !== null) return false
    const d = net.minutes[i]!
    const m = net.mode[i]!
    let s: number
    if (node % 2 === 0) s = Math.ceil(to - EPS)
    else s = m === 2 ? net.hours.startToEndAt(Math.ceil(to - EPS), d) : Math.ceil(to - EPS) - d
    if (m !== 0) s = net.hours.nextStart(Math.max(s, -FAR), m === 2 ? 1 : d)
    if (s <= b.lo[2 * i]! + EPS) return true
    if (s > b.hi[2 * i]! + EPS || s > FAR) return false
    const e = m === 2 ? net.hours.endOfWork(s, d) : s + d
    if (e > b.hi[2 * i + 1]! + EPS || e > FAR) return false
    // -0 reads as another number than 0.
    b.lo[2 * i] = s + 0
    b.lo[2 * i + 1] = e + 0
    this.#push(2 * i)
    this.#push(2 * i + 1)
    return true
  }

  #lower(b: Bounds, node: number, to: number): boolean {
    if (to >= b.hi[node]! - EPS) return true
    const { net } = this
    const i = node >> 1
    if (net.fixed[i] !== null) return false
    const d = net.minutes[i]!
    const m = net.mode[i]!
    let s: number
    if (node % 2 === 0) s = Math.floor(to + EPS)
    else s = m === 2 ? net.hours.startOfWork(Math.floor(to + EPS), d) : Math.floor(to + EPS) - d
    if (m !== 0) s = net.hours.prevStart(s, m === 2 ? 1 : d)
    if (s >= b.hi[2 * i]! - EPS) return true
    if (s < b.lo[2 * i]! - EPS) return false
    b.hi[2 * i] = s
    b.hi[2 * i + 1] = m === 2 ? net.hours.endOfWork(s, d) : s + d
    this.#push(2 * i)
    this.#push(2 * i + 1)
    return true
  }

  #up(b: Bounds): boolean {
    const { net } = this
    this.#raised.fill(0)
    for (let head = 0; head < this.#queue.length; head++) {
      const u = this.#queue[head]!
      this.#queued[u] = 0
      this.#work++
      // A bound that keeps rising may go round a loop that never closes: that is told from hours by the loop alone.
      if (++this.#raised[u]! > 6 && this.#doubt !== null && this.#loops()) return this.#fail()
      const x = b.lo[u]!
      for (const a of net.out[u]!) if (!this.#raise(b, a.to, x + a.w)) return this.#fail()
      if (u % 2 === 1)
        for (const a of this.#orderOut[u >> 1]!) if (!this.#raise(b, a.to, x + a.w)) return this.#fail()
    }
    this.#queue.length = 0
    return true
  }

  #down(b: Bounds): boolean {
    const { net } = this
    this.#raised.fill(0)
    for (let head = 0; head < this.#queue.length; head++) {
      const v = this.#queue[head]!
      this.#queued[v] = 0
      this.#work++
      if (++this.#raised[v]! > 6 && this.#doubt !== null && this.#loops()) return this.#fail()
      const x = b.hi[v]!
      for (const a of net.into[v]!) if (!this.#lower(b, a.to, x - a.w)) return this.#fail()
      if (v % 2 === 0)
        for (const a of this.#orderIn[v >> 1]!) if (!this.#lower(b, a.to, x - a.w)) return this.#fail()
    }
    this.#queue.length = 0
    return true
  }

  // A loop of constraints that asks for more than it gives, hours aside. Bounds that have settled before hold no such
  // loop, so after one order more it can only run through that order: the longest way from its later task back to
  // its earlier one tells. At the root every node may begin one.
  #loops(): boolean {
    const { net } = this
    const n = 2 * net.count
    const order = this.#doubt
    this.#doubt = null
    if (order === null) return false
    const far = new Float64Array(n).fill(order === 'root' ? 0 : Number.NEGATIVE_INFINITY)
    const goal = order === 'root' ? -1 : 2 * order.first + 1
    const queue: number[] = []
    const rounds = new Int32Array(n)
    const waiting = new Uint8Array(n)
    const reach = (node: number, x: number) => {
      if (x <= far[node]! + EPS) return
      far[node] = x
      if (waiting[node] === 0) {
        waiting[node] = 1
        queue.push(node)
      }
    }
    if (order === 'root') for (let u = 0; u < n; u++) queue.push(u)
    else reach(2 * order.then, 0)
    for (let head = 0; head < queue.length; head++) {
      const u = queue[head]!
      waiting[u] = 0
      if (goal >= 0 && far[goal]! > EPS) return true
      if (++rounds[u]! > n + 1) return true
      const i = u >> 1
      const fix = net.fixed[i]
      const d = fix === null || fix === undefined ? net.minutes[i]! : fix[1] - fix[0]
      const x = far[u]!
      if (u % 2 === 0) reach(u + 1, x + d)
      // Without a pause the end is bound to the start both ways.
      else if (net.mode[i] !== 2) reach(u - 1, x - d)
      for (const a of net.out[u]!) reach(a.to, x + a.w)
      if (u % 2 === 1)
        for (const a of this.#orderOut[i]!) if (u !== goal || order === 'root') reach(a.to, x + a.w)
    }
    return goal >= 0 && far[goal]! > EPS
  }
}
