import type { Ring } from '../shape/region.ts'

/** Steps of the grid on which sides are decided, per mm (the clipper's own, see shape/clip.ts). */
const UNITS_PER_MM = 10_000

/**
 * One outline and its holes as rings of linked points, for cutting ears: a working state that changes in place.
 * Bridges double the two points they join, so a node is not the same as a point.
 */
export class Loop {
  readonly x: Float64Array
  readonly y: Float64Array
  /** Number of the point in the caller's numbering. */
  readonly point: Uint32Array
  readonly before: Int32Array
  readonly after: Int32Array
  /** First node of the outline, and of each hole. */
  readonly outer: number
  readonly holes: readonly number[]
  readonly #reflex: Uint8Array
  #nodes: number
  #cells: Int32Array[] = []
  #across = 1
  #side = 1
  #minX = 0
  #minY = 0

  constructor(rings: readonly Ring[], starts: readonly number[], outer: number, holes: readonly number[]) {
    const size = [outer, ...holes].reduce((sum, k) => sum + rings[k]!.length / 2, 0) + 2 * holes.length
    this.x = new Float64Array(size)
    this.y = new Float64Array(size)
    this.point = new Uint32Array(size)
    this.before = new Int32Array(size)
    this.after = new Int32Array(size)
    this.#reflex = new Uint8Array(size)
    this.#nodes = 0
    this.outer = this.#link(rings[outer]!, starts[outer]!)
    this.holes = holes.map(k => this.#link(rings[k]!, starts[k]!))
  }

  #link(ring: Ring, start: number): number {
    const first = this.#nodes
    const n = ring.length / 2
    for (let k = 0; k < n; k++) {
      const at = first + k
      this.x[at] = Math.round(ring[2 * k]! * UNITS_PER_MM)
      this.y[at] = Math.round(ring[2 * k + 1]! * UNITS_PER_MM)
      this.point[at] = start + k
      this.before[at] = k === 0 ? first + n - 1 : at - 1
      this.after[at] = k === n - 1 ? first : at + 1
    }
    this.#nodes += n
    return first
  }

  /** Joins a node of a hole to one of the outline, there and back; returns the outline's. */
  bridge(hole: number, to: number): number {
    const to2 = this.#copy(to)
    const hole2 = this.#copy(hole)
    const after = this.after[to]!
    const before = this.before[hole]!
    this.#tie(to, hole)
    this.#tie(before, hole2)
    this.#tie(hole2, to2)
    this.#tie(to2, after)
    return to
  }

  #copy(k: number): number {
    const at = this.#nodes++
    this.x[at] = this.x[k]!
    this.y[at] = this.y[k]!
    this.point[at] = this.point[k]!
    return at
  }

  #tie(a: number, b: number): void {
    this.after[a] = b
    this.before[b] = a
  }

  /** Twice the signed area of three nodes: positive where they turn left. */
  cross(a: number, b: number, c: number): number {
    const { x, y } = this
    return (x[b]! - x[a]!) * (y[c]! - y[a]!) - (x[c]! - x[a]!) * (y[b]! - y[a]!)
  }

  /** How the outline turns at a node. */
  turn(k: number): number {
    return this.cross(this.before[k]!, k, this.after[k]!)
  }

  length(start: number): number {
    let n = 0
    let k = start
    do {
      n++
      k = this.after[k]!
    } while (k !== start)
    return n
  }

  /** Takes a node out. */
  drop(k: number): void {
    const p = this.before[k]!
    const n = this.after[k]!
    this.#tie(p, n)
    this.#reflex[k] = 0
    // A reflex point may stand free now; one that turns left keeps doing so but for points on a line.
    this.#reflex[p] = this.#reflex[p]! && this.turn(p) <= 0 ? 1 : 0
    this.#reflex[n] = this.#reflex[n]! && this.turn(n) <= 0 ? 1 : 0
  }

  /** Lays the points that do not turn left into a grid. */
  sortReflex(start: number): void {
    const nodes: number[] = []
    let [minX, minY, maxX, maxY] = [this.x[start]!, this.y[start]!, this.x[start]!, this.y[start]!]
    let k = start
    do {
      minX = Math.min(minX, this.x[k]!)
      maxX = Math.max(maxX, this.x[k]!)
      minY = Math.min(minY, this.y[k]!)
      maxY = Math.max(maxY, this.y[k]!)
      if (this.turn(k) <= 0) nodes.push(k)
      k = this.after[k]!
    } while (k !== start)
    this.#across = Math.max(1, Math.min(128, Math.ceil(Math.sqrt(nodes.length))))
    this.#side = (Math.max(maxX - minX, maxY - minY) || 1) / this.#across
    this.#minX = minX
    this.#minY = minY
    const cells: number[][] = []
    for (const node of nodes) {
      this.#reflex[node] = 1
      const cell = this.#row(this.y[node]!) * this.#across + this.#column(this.x[node]!)
      cells[cell] ??= []
      cells[cell].push(node)
    }
    this.#cells = Array.from({ length: this.#across ** 2 }, (_, c) => Int32Array.from(cells[c] ?? []))
  }

  #column(x: number): number {
    return Math.min(this.#across - 1, Math.max(0, Math.floor((x - this.#minX) / this.#side)))
  }

  #row(y: number): number {
    return Math.min(this.#across - 1, Math.max(0, Math.floor((y - this.#minY) / this.#side)))
  }

  /** Whether the triangle at a node that turns left holds no other point. */
  isEar(b: number): boolean {
    const { x, y } = this
    const a = this.before[b]!
    const c = this.after[b]!
    const c0 = this.#column(Math.min(x[a]!, x[b]!, x[c]!))
    const c1 = this.#column(Math.max(x[a]!, x[b]!, x[c]!))
    const r0 = this.#row(Math.min(y[a]!, y[b]!, y[c]!))
    const r1 = this.#row(Math.max(y[a]!, y[b]!, y[c]!))
    for (let row = r0; row <= r1; row++) {
      for (let column = c0; column <= c1; column++) {
        for (const k of this.#cells[row * this.#across + column]!) {
          if (this.#reflex[k] === 0 || k === a || k === b || k === c) continue
          if (this.#same(k, a) || this.#same(k, b) || this.#same(k, c)) {
            if (this.#entersAt(k, a, b, c)) return false
          } else if (this.cross(a, b, k) >= 0 && this.cross(b, c, k) >= 0 && this.cross(c, a, k) >= 0)
            return false
        }
      }
    }
    return true
  }

  // A point on a corner of the ear is in the way only where the outline leads from it into the ear.
  #entersAt(k: number, a: number, b: number, c: number): boolean {
    for (const end of [this.before[k]!, this.after[k]!]) {
      if (this.#same(end, a) || this.#same(end, b) || this.#same(end, c)) continue
      const [ab, bc, ca] = [this.cross(a, b, end), this.cross(b, c, end), this.cross(c, a, end)]
      // Seen from the corner the way leads strictly between the two sides that meet there.
      if (this.#same(k, a) ? ab > 0 && ca > 0 : this.#same(k, b) ? ab > 0 && bc > 0 : bc > 0 && ca > 0)
        return true
    }
    return false
  }

  #same(a: number, b: number): boolean {
    return this.x[a] === this.x[b] && this.y[a] === this.y[b]
  }

  /** The node whose triangle is smallest: what is cut when there is no ear left, which no sound region comes to. */
  leastWrong(start: number): number {
    let best = start
    let least = Number.POSITIVE_INFINITY
    let k = start
    do {
      const size = Math.abs(this.turn(k))
      if (size < least) {
        least = size
        best = k
      }
      k = this.after[k]!
    } while (k !== start)
    return best
  }
}
