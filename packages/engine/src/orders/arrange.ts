import type { Block } from './block.ts'
import { alike, whyNot } from './law.ts'

/**
 * What may come before what. A pair that the given order has against a law is left free: it is the maker's word.
 */
export class Precedence {
  /** free[a][b]: a may come before b. */
  readonly #free: readonly (readonly boolean[])[]
  readonly #alike: readonly (readonly boolean[])[]
  readonly count: number

  constructor(blocks: readonly Block[]) {
    this.count = blocks.length
    this.#free = blocks.map((a, i) => blocks.map((b, k) => i < k || whyNot(a, b) === null))
    this.#alike = blocks.map(a => blocks.map(b => a !== b && alike(a, b)))
  }

  mayPrecede(first: number, then: number): boolean {
    return this.#free[first]![then]!
  }

  lawful(order: readonly number[]): boolean {
    return order.every((a, i) => order.slice(i + 1).every(b => this.mayPrecede(a, b)))
  }

  /** The order of its kind in which steps that may change places stand as in the given one: one for all that are alike. */
  normal(order: readonly number[]): number[] {
    const out: number[] = []
    for (const b of order) {
      let at = out.length
      for (let k = out.length - 1; k >= 0 && this.#alike[out[k]!]![b]; k--) if (out[k]! > b) at = k
      out.splice(at, 0, b)
    }
    return out
  }
}

/**
 * Every lawful order, one for all that are alike, in the order of the given one's steps; null where there are more
 * than `most`.
 */
export function everyOrder(laws: Precedence, most: number): number[][] | null {
  const out: number[][] = []
  const taken = new Array<boolean>(laws.count).fill(false)
  const order: number[] = []
  const grow = (): boolean => {
    if (order.length === laws.count) {
      out.push([...order])
      return out.length <= most
    }
    for (let b = 0; b < laws.count; b++) {
      if (taken[b]) continue
      const open = taken.every((t, a) => t || a === b || laws.mayPrecede(b, a))
      if (!open) continue
      taken[b] = true
      order.push(b)
      // What begins unlike its kind's order goes on so.
      const more = laws.normal(order).every((x, i) => x === order[i]) ? grow() : true
      order.pop()
      taken[b] = false
      if (!more) return false
    }
    return true
  }
  return grow() ? out : null
}

/** Orders one move away: one step, or a run of steps on one face, put elsewhere; lawful and normal, each once. */
export function nearOrders(
  laws: Precedence,
  from: readonly number[],
  faces: readonly (string | null)[]
): number[][] {
  const out = new Map<string, number[]>()
  const put = (order: readonly number[]) => {
    if (!laws.lawful(order)) return
    const normal = laws.normal(order)
    out.set(normal.join(' '), normal)
  }
  for (let at = 0; at < from.length; at++)
    for (const length of runsAt(from, at, faces)) {
      const rest = [...from.slice(0, at), ...from.slice(at + length)]
      for (let to = 0; to <= rest.length; to++)
        if (to !== at) put([...rest.slice(0, to), ...from.slice(at, at + length), ...rest.slice(to)])
    }
  out.delete(laws.normal(from).join(' '))
  return [...out.values()]
}

// One step; and all that follow it on the same face.
function runsAt(order: readonly number[], at: number, faces: readonly (string | null)[]): number[] {
  const face = faces[order[at]!]
  let to = at + 1
  while (face !== null && to < order.length && faces[order[to]!] === face) to++
  return to - at > 1 ? [1, to - at] : [1]
}
